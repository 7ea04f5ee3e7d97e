using ToolpathForge.Catalogue;

namespace ToolpathForge.Cutting;

/// <summary>
/// How far a light finishing cut pushes the bit aside. The bit is only part of it: a light frame gives way far more. Forces are those of a cut
/// much thinner than the bit, F = kc·ap·h with the thickest chip h = 2·fz·√(x(1 - x)), x = ae/D; the bit bends as a cantilever whose core is
/// 0.8 of its diameter (from memory).
/// </summary>
public static class SideLoad
{
    /// <summary>Young's modulus of carbide, N/mm² (from memory).</summary>
    internal const double Carbide = 600_000;

    /// <summary>Young's modulus of steel, N/mm² (any handbook).</summary>
    internal const double Steel = 205_000;

    /// <summary>Diameter of the core that bends, as a share of the bit's (from memory).</summary>
    internal const double Core = 0.8;

    /// <summary>Thickest chip of a tooth, mm.</summary>
    /// <param name="chipLoad">Feed a tooth, mm.</param>
    /// <param name="engagement">Width of the cut ae, at most half the diameter, mm.</param>
    /// <param name="diameter">Of the bit, mm.</param>
    public static double ThickestChip(double chipLoad, double engagement, double diameter)
    {
        double x = Math.Min(0.5, engagement / diameter);
        return 2 * chipLoad * Math.Sqrt(x * (1 - x));
    }

    /// <summary>Side force, N.</summary>
    /// <param name="cuttingForce">Specific cutting force kc, N/mm².</param>
    /// <param name="depth">Depth of the cut ap, mm.</param>
    /// <param name="chip">Thickest chip, mm.</param>
    public static double Force(double cuttingForce, double depth, double chip) => cuttingForce * depth * chip;

    /// <summary>How far the bit's end bends, mm: FL³/(3EI), I = π(0.8 D)⁴/64.</summary>
    /// <param name="force">N.</param>
    /// <param name="length">How far the bit sticks out of the collet, mm.</param>
    /// <param name="diameter">mm.</param>
    /// <param name="substance">What it is made of.</param>
    public static double Bending(double force, double length, double diameter, BitSubstance substance)
    {
        double modulus = substance == BitSubstance.Carbide ? Carbide : Steel;
        double inertia = Math.PI * Math.Pow(Core * diameter, 4) / 64;
        return force * length * length * length / (3 * modulus * inertia);
    }

    /// <summary>How far bit and frame give way together, mm.</summary>
    /// <param name="force">N.</param>
    /// <param name="length">How far the bit sticks out, mm.</param>
    /// <param name="bit">The bit.</param>
    /// <param name="stiffness">Side stiffness of the frame at the bit, N/mm.</param>
    public static double GivingWay(double force, double length, Bit bit, double stiffness) =>
        Bending(force, length, bit.Diameter, bit.Substance) + (force / stiffness);
}
