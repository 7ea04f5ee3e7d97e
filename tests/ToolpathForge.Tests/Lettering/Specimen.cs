using ToolpathForge.Drawings;
using ToolpathForge.Geometry;
using ToolpathForge.Lettering;

namespace ToolpathForge.Tests.Lettering;

/// <summary>A sheet that shows every letter, ordinary words and ordinary measures: what a person looks at before approving a change of the alphabet.</summary>
internal static class Specimen
{
    internal static Drawing Sheet()
    {
        var elements = new List<DrawingElement>();
        double y = 0;
        void Line(string text, double height, double after)
        {
            elements.Add(new Text(text, new Point2(0, y), TextAlign.Start, height));
            y -= after;
        }

        Line("ABCDEFGHIJKLM", 12, 20);
        Line("NOPQRSTUVWXYZ", 12, 22);
        Line("abcdefghijklm", 12, 20);
        Line("nopqrstuvwxyz", 12, 22);
        Line("0123456789  3 1/2  11 15/32  ¾", 12, 24);
        Line("' \" ° × ⌀ / - – . , : ; # + ( ) = & ?", 9, 17);
        Line("! % < > [ ] _ ≤ ≥ ± ← → ↑ ↓ ↺ ↻ ↔ ↗", 9, 17);
        Line("* @ $ ~ ^ { } | \\ ` ÷ ≈ … · µ ² ³ ∠ ⊥ ∆", 9, 20);
        Line("Boathouse porch: rafter tail 2x8, scoop, right hand", 5, 11);
        Line("Hardboard 1/4 in · bit ⌀ 6.35, 2 flutes · 18 000 rpm", 5, 11);
        Line("BEAM END 2x12 · QUARTER ELLIPSE 200 × 120 · CUT ONCE", 5, 11);
        Line("Run 7 1/4\"  depth 3-1/2\"  end cut 15°  R 74.475 ±0.05", 5, 11);
        Line("The quick brown fox jumps over the lazy dog. Waltz, bad nymph, for quick jigs vex!", 3.5, 8);
        Line("Tooth runs from the profile edge out to the tip; lay the board face up, edge towards you. AVATAR Type LTD.", 2.8, 11);
        Line("Il1 O0 S5 B8 Z2 G6 rn m cl d vv w   1/2 1/4 3/4 5/8 7/16 23/32 63/64 100/125", 4, 8);
        return new Drawing("Specimen of the lettering", "Every letter, figure and sign of the stroke alphabet.", [.. elements]);
    }
}
