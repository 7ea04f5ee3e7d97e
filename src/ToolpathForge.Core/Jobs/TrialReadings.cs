namespace ToolpathForge.Jobs;

/// <summary>
/// What a caliper said of a trial piece: a slot as wide as the bit, and the square that was cut out round with the same bit. All in mm. The machine ran the
/// track of a square of side S with a bit of nominal diameter D, which is a square of S + D.
/// </summary>
/// <param name="Nominal">D, the diameter that the trial program was made with.</param>
/// <param name="Slot">Width of the slot: the bit's true diameter d, run-out and all.</param>
/// <param name="Side">S, the square's side in the trial program.</param>
/// <param name="AcrossX">The square's width along X, between its two sides along Y.</param>
/// <param name="AcrossY">Its width along Y.</param>
/// <param name="Rising">Its diagonal from the near left to the far right corner.</param>
/// <param name="Falling">Its diagonal from the far left to the near right corner.</param>
public sealed record TrialReadings(double Nominal, double Slot, double Side, double AcrossX, double AcrossY, double Rising, double Falling)
{
    /// <summary>
    /// The errors of the axes. The piece is a parallelogram with sides u along X and v along the leaning Y: rising² - falling² = 4 u·v, and each width is the
    /// other side's times cos φ, so that q = (rising² - falling²) / (4 · across X · across Y) = sin φ / cos² φ, hence sin φ = (√(1 + 4q²) - 1) / 2q. The
    /// track was wider than the piece by d on either axis: scale = (across + d) / (cos φ · (S + D)). (Worked from the parallelogram.)
    /// </summary>
    public AxisErrors Axes
    {
        get
        {
            double q = ((Rising * Rising) - (Falling * Falling)) / (4 * AcrossX * AcrossY);

            // The same as (√(1 + 4q²) - 1) / 2q, written so that it loses no digits near nothing.
            double sine = 2 * q / (1 + Math.Sqrt(1 + (4 * q * q)));
            double cosine = Math.Sqrt(1 - (sine * sine));
            double track = Side + Nominal;
            return new AxisErrors((AcrossX + Slot) / (cosine * track), (AcrossY + Slot) / (cosine * track), Math.Asin(sine));
        }
    }

    /// <summary>
    /// How far the diagonals are from what the widths make of them, mm: in a parallelogram rising² + falling² = 2 (u² + v²). Far more than a caliper's error
    /// is a slip in a reading.
    /// </summary>
    public double Contradiction
    {
        get
        {
            double cosine = Math.Cos(Axes.Skew);
            double u = AcrossX / cosine;
            double v = AcrossY / cosine;
            return Math.Abs(Math.Sqrt(((Rising * Rising) + (Falling * Falling)) / 2) - Math.Sqrt((u * u) + (v * v)));
        }
    }

    /// <summary>The bit's diameter by a bored hole, mm: its width less what the axis made of the track; near the slot's where nothing has play.</summary>
    /// <param name="hole">Width of the hole along an axis.</param>
    /// <param name="programmed">Its diameter in the trial program.</param>
    /// <param name="scale">Of that axis.</param>
    public double BitByHole(double hole, double programmed, double scale) => hole - (scale * (programmed - Nominal));
}
