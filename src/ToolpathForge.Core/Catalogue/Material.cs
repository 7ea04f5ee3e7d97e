using System.Collections.Immutable;

namespace ToolpathForge.Catalogue;

/// <summary>What the cut goes through.</summary>
public enum MaterialKind
{
    /// <summary>Coniferous timber, with grain.</summary>
    Softwood,

    /// <summary>Broad-leaved timber, with grain.</summary>
    Hardwood,

    /// <summary>Plywood, fibreboard, hardboard: no one grain direction.</summary>
    Panel,
}

/// <summary>The chip a tooth may take with a bit of one diameter, at a depth of one diameter.</summary>
/// <param name="Diameter">Cutting diameter, mm.</param>
/// <param name="Least">Thinner rubs and heats, mm a tooth.</param>
/// <param name="Most">Thicker overloads, mm a tooth.</param>
public readonly record struct ChipBand(double Diameter, double Least, double Most);

/// <summary>A material and how it cuts.</summary>
/// <param name="Id">The word a job uses.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="Kind">Timber or panel.</param>
/// <param name="Density">Of timber at 12 % moisture, of panels as delivered, kg/m³.</param>
/// <param name="PassDepth">Largest depth of one pass as a share of the bit's diameter.</param>
/// <param name="RampAngle">Steepest ramp, degrees below horizontal.</param>
/// <param name="CuttingForce">Specific cutting force kc, N/mm².</param>
/// <param name="Chips">Bands by diameter, ascending; at least one.</param>
/// <param name="Source">Where the row comes from.</param>
public sealed record Material(
    string Id,
    string Name,
    MaterialKind Kind,
    double Density,
    double PassDepth,
    double RampAngle,
    double CuttingForce,
    ImmutableArray<ChipBand> Chips,
    Source Source)
{
    /// <summary>Whether it has one grain direction.</summary>
    public bool HasGrain => Kind != MaterialKind.Panel;

    /// <summary>Density at a moisture, kg/m³; a panel keeps that of its row.</summary>
    /// <param name="moisture">Mass of water to that of the dry wood, per cent, at least 0.</param>
    public double DensityAt(double moisture) => HasGrain ? WoodDensity.At(Density, moisture) : Density;

    /// <summary>The chip band for a diameter, linear between the rows, held at the ends.</summary>
    /// <param name="diameter">Cutting diameter, mm.</param>
    public ChipBand ChipAt(double diameter)
    {
        for (int i = 1; i < Chips.Length; i++)
        {
            if (diameter <= Chips[i].Diameter)
            {
                ChipBand a = Chips[i - 1];
                ChipBand b = Chips[i];
                double share = Math.Max(0, (diameter - a.Diameter) / (b.Diameter - a.Diameter));
                return new ChipBand(diameter, a.Least + ((b.Least - a.Least) * share), a.Most + ((b.Most - a.Most) * share));
            }
        }

        return Chips[^1] with { Diameter = diameter };
    }
}
