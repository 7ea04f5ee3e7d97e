using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using ToolpathForge.Drawings;

namespace ToolpathForge.Exchange.Pdf;

/// <summary>
/// Writes pages as PDF (ISO 32000-1, header 1.6): vector paths only, lettering as strokes, so that no font is needed; nothing compressed, no dates, no random
/// identifiers, so that the same pages give the same bytes everywhere. A drawing that several pages show is written once. Readers are asked to print
/// without scaling (ViewerPreferences, PrintScaling None).
/// </summary>
public static class PdfWriter
{
    private const int Catalog = 1;
    private const int PageTree = 2;
    private const int Info = 3;
    private const int First = 4;

    /// <summary>Writes a document.</summary>
    /// <param name="title">What it is, for the window's title bar.</param>
    /// <param name="pages">At least one.</param>
    /// <exception cref="ArgumentException">No page, or a page without a size.</exception>
    public static byte[] Write(string title, ImmutableArray<PrintPage> pages)
    {
        ArgumentNullException.ThrowIfNull(title);
        if (pages.IsDefaultOrEmpty || pages.Any(p => !(p.Width > 0 && p.Height > 0 && double.IsFinite(p.Width + p.Height))))
        {
            throw new ArgumentException("A document has pages, and a page has a size.", nameof(pages));
        }

        // Objects: catalogue, page tree, information, the pictures, then two for each page.
        List<PageView> pictures = Pictures(pages);
        int firstPage = First + pictures.Count;
        var file = new PdfFile();
        file.Add(Catalog, $"<< /Type /Catalog /Pages {PageTree} 0 R /Lang (en) /ViewerPreferences << /PrintScaling /None /DisplayDocTitle true >> >>");
        string kids = string.Join(' ', Enumerable.Range(0, pages.Length).Select(i => FormattableString.Invariant($"{firstPage + (2 * i)} 0 R")));
        file.Add(PageTree, FormattableString.Invariant($"<< /Type /Pages /Count {pages.Length} /Kids [{kids}] >>"));
        file.Add(Info, $"<< /Title {PdfFile.Text(title)} /Producer (ToolpathForge) >>");
        for (int i = 0; i < pictures.Count; i++)
        {
            ImmutableArray<Mark> marks = Draughting.Marks(pictures[i].Drawing, pictures[i].Scale);
            file.AddStream(First + i, $"/Type /XObject /Subtype /Form /BBox [{Bounds(marks, pictures[i].Scale)}]", PdfPicture.Content(marks, pictures[i].Scale));
        }

        for (int i = 0; i < pages.Length; i++)
        {
            int number = firstPage + (2 * i);
            int[] used = [.. pages[i].Views.Select(v => pictures.FindIndex(p => IsSame(p, v)))];
            string names = string.Join(' ', used.Distinct().Select(u => FormattableString.Invariant($"/P{u} {First + u} 0 R")));
            file.Add(number, string.Create(
                CultureInfo.InvariantCulture,
                $"<< /Type /Page /Parent {PageTree} 0 R /MediaBox [0 0 {Points(pages[i].Width)} {Points(pages[i].Height)}] /Resources << /XObject << {names} >> >> /Contents {number + 1} 0 R >>"));
            file.AddStream(number + 1, "", Content(pages[i], used));
        }

        return file.Finish(Catalog, Info);
    }

    private static List<PageView> Pictures(ImmutableArray<PrintPage> pages)
    {
        var pictures = new List<PageView>();
        foreach (PageView view in pages.SelectMany(p => p.Views))
        {
            if (!pictures.Exists(p => IsSame(p, view)))
            {
                pictures.Add(view);
            }
        }

        return pictures;
    }

    private static bool IsSame(PageView a, PageView b) => ReferenceEquals(a.Drawing, b.Drawing) && a.Scale.Equals(b.Scale);

    private static string Content(PrintPage page, int[] used)
    {
        var content = new StringBuilder();
        for (int i = 0; i < used.Length; i++)
        {
            PageView view = page.Views[i];
            content.Append("q\n");
            if (view.Window is { } window)
            {
                Number(window.MinX);
                Number(window.MinY);
                Number(window.Width);
                Number(window.Height);
                content.Append("re W n\n");
            }

            content.Append("1 0 0 1 ");
            Number(view.Origin.X);
            Number(view.Origin.Y);
            content.Append("cm /P").Append(used[i].ToString(CultureInfo.InvariantCulture)).Append(" Do\nQ\n");
        }

        return content.ToString();

        void Number(double millimetres) => content.AppendNumber(millimetres * PdfNumber.PointsPerMillimetre);
    }

    private static string Bounds(ImmutableArray<Mark> marks, double scale)
    {
        // Pens reach half their width beyond their lines; the widest is a millimetre.
        Geometry.Box2 box = Draughting.BoxOf(marks);
        double paper = scale * PdfNumber.PointsPerMillimetre;
        return box.IsEmpty
            ? "0 0 0 0"
            : $"{PdfNumber.Format((box.MinX * paper) - 6)} {PdfNumber.Format((box.MinY * paper) - 6)} {PdfNumber.Format((box.MaxX * paper) + 6)} {PdfNumber.Format((box.MaxY * paper) + 6)}";
    }

    private static string Points(double millimetres) => PdfNumber.Format(millimetres * PdfNumber.PointsPerMillimetre);
}
