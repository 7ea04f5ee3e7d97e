namespace ToolpathForge.Cutting;

/// <summary>
/// Fastest that a bit is run by its diameter, on a machine and by hand (common practice; the marking on the bit and the router's manual win): 24,000 rpm up to 1 in, 18,000 up to 2 in,
/// 16,000 up to 2 1/2 in, 12,000 up to 3 1/2 in, 10,000 beyond. The limits go down in steps because a rim speed alone would let a large bit run too fast for its mass.
/// </summary>
public static class SpeedByDiameter
{
    /// <summary>A bit that sticks out by more than this many shanks runs slower (common practice).</summary>
    public const double LongBit = 6;

    /// <summary>Share of the speed for a long bit (judgement: as far as practice says more than "slower").</summary>
    public const double LongShare = 0.75;

    private static readonly (double Diameter, double Speed)[] s_bands = [(25.4, 24000), (50.8, 18000), (63.5, 16000), (88.9, 12000)];

    /// <summary>The most, rev/min.</summary>
    /// <param name="diameter">Of the bit, mm, more than 0.</param>
    public static double Most(double diameter)
    {
        foreach ((double widest, double speed) in s_bands)
        {
            if (diameter <= widest + 1e-6)
            {
                return speed;
            }
        }

        return 10000;
    }

    /// <summary>The most for a bit that sticks out so far, rev/min.</summary>
    /// <param name="diameter">Of the bit, mm, more than 0.</param>
    /// <param name="stickOut">From the collet to its end, mm.</param>
    /// <param name="shank">Diameter of its shank, mm, more than 0.</param>
    public static double Most(double diameter, double stickOut, double shank) => Most(diameter) * (stickOut > LongBit * shank ? LongShare : 1);
}
