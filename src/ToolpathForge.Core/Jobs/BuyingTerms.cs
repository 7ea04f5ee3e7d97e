using System.Collections.Immutable;

namespace ToolpathForge.Jobs;

/// <summary>How boards are bought and sawn to length.</summary>
/// <param name="Lengths">Lengths that the yard sells, mm, ascending; empty when no list is asked for.</param>
/// <param name="Kerf">What one saw cut takes, mm.</param>
/// <param name="Trim">What is sawn off either end of a bought length, for checks and splits, mm.</param>
public sealed record BuyingTerms(ImmutableArray<double> Lengths, double Kerf, double Trim);
