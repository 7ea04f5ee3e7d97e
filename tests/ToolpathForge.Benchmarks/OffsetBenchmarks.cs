using BenchmarkDotNet.Attributes;
using NetTopologySuite.Geometries;
using ToolpathForge.Geometry;

namespace ToolpathForge.Benchmarks;

/// <summary>The shapes of the figures, one by one, with what they allocate.</summary>
[MemoryDiagnoser]
public class OffsetBenchmarks
{
    private Contour _contour = null!;
    private Polygon _polygon = null!;

    /// <summary>Shape and size.</summary>
    [Params("plate 16", "gear 1000", "gear 20000", "ring 20000", "comb 200")]
    public string Shape { get; set; } = "";

    /// <summary>Outwards and inwards, mm.</summary>
    [Params(3.175, -3.175)]
    public double Distance { get; set; }

    /// <summary>Makes the shape.</summary>
    [GlobalSetup]
    public void Setup()
    {
        string[] words = Shape.Split(' ');
        int size = int.Parse(words[1], System.Globalization.CultureInfo.InvariantCulture);
        _contour = words[0] switch
        {
            "plate" => Shapes.Plate(),
            "gear" => Shapes.Gear(size),
            "ring" => Shapes.NoisyRing(size),
            _ => Shapes.Comb(size),
        };
        _polygon = Shapes.Polygon(_contour);
    }

    /// <summary>Ours.</summary>
    [Benchmark]
    public OffsetResult Arcs() => Offsetter.Closed(_contour, Distance);

    /// <summary>The polygon library at equal accuracy.</summary>
    [Benchmark(Baseline = true)]
    public object Polygons() => PolygonLibrary.Offset(_polygon, Distance);
}
