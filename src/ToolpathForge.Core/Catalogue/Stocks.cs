namespace ToolpathForge.Catalogue;

/// <summary>A dressed size of lumber, mm.</summary>
/// <param name="Id">The word a job uses, as <c>2x8</c>.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="Thickness">Dressed thickness, mm.</param>
/// <param name="Width">Dressed width, mm.</param>
/// <param name="Source">Where the row comes from.</param>
public sealed record Lumber(string Id, string Name, double Thickness, double Width, Source Source)
{
    /// <summary>Whether it is engineered timber: laminated veneer or strands, glued or cross-laminated timber, an I-joist, part of a truss. It is cut only as its maker allows.</summary>
    public bool Engineered { get; init; }

    /// <summary>Moisture at which it is sold, per cent.</summary>
    public double Moisture { get; init; } = WoodDensity.SoldAsDry;
}

/// <summary>A kind of panel.</summary>
/// <param name="Id">The word a job uses.</param>
/// <param name="Name">What a person calls it.</param>
/// <param name="Material">Id of its material.</param>
/// <param name="Nominal">Nominal thickness, mm.</param>
/// <param name="Thinnest">Thinnest that the standard lets through, mm.</param>
/// <param name="Thickest">Thickest, mm.</param>
/// <param name="Source">Where the row comes from.</param>
public sealed record Panel(string Id, string Name, string Material, double Nominal, double Thinnest, double Thickest, Source Source);
