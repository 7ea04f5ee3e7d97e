using System.Collections.Immutable;
using ToolpathForge.Service;

namespace ToolpathForge.Cli;

/// <summary>Lays a report out as text.</summary>
internal static class Layout
{
    private static readonly (Weight Weight, string Word, string Colour)[] Weights =
        [(Weight.Problem, "problem", "\e[1;31m"), (Weight.Warning, "warning", "\e[1;33m"), (Weight.Note, "note", "\e[1;36m")];

    /// <summary>
    /// Remarks, heaviest first: <c>problem: porch.toml:12:9: …</c>, the advice on the next line, and how many there are of each at the end.
    /// </summary>
    internal static void Remarks(ImmutableArray<Remark> remarks, TextWriter to, bool colour)
    {
        var counts = new List<string>();
        foreach ((Weight weight, string word, string ink) in Weights)
        {
            int count = 0;
            foreach (Remark remark in remarks.Where(r => r.Weight == weight))
            {
                count++;
                to.Write(colour ? $"{ink}{word}\e[0m: " : $"{word}: ");
                to.Write(remark.Where.Length > 0 ? remark.Where + ": " : "");
                to.WriteLine(remark.Says);
                if (remark.Advice.Length > 0)
                {
                    to.WriteLine("    " + remark.Advice);
                }
            }

            if (count > 0)
            {
                counts.Add(count == 1 ? $"1 {word}" : FormattableString.Invariant($"{count} {word}s"));
            }
        }

        if (counts.Count > 0)
        {
            to.WriteLine(string.Join(", ", counts) + ".");
        }
    }

    /// <summary>Sections with an empty line between them; tables as <see cref="TableLayout"/> has them.</summary>
    internal static void Sections(ImmutableArray<Section> sections, TextWriter to)
    {
        bool first = true;
        foreach (Section section in sections)
        {
            if (!first)
            {
                to.WriteLine();
            }

            first = false;
            foreach (string line in section.Lines)
            {
                to.WriteLine(line);
            }

            if (section.Columns.Length > 0)
            {
                TableLayout.Write(section, to);
            }
        }
    }
}
