using System.Globalization;
using System.Text;
using ToolpathForge.Tables;

namespace ToolpathForge.Tests.Jobs;

/// <summary>Fills the generated parts of a reference page: what stands between a marker that names a part and the next end marker.</summary>
internal static class ReferencePage
{
    internal static string Fill(string page, IReadOnlyDictionary<string, string> parts)
    {
        const string Begin = "<!-- generated: ";
        const string End = "<!-- end of generated part -->";
        var filled = new StringBuilder();
        var used = new HashSet<string>(StringComparer.Ordinal);
        int at = 0;
        while (page.IndexOf(Begin, at, StringComparison.Ordinal) is var begin and >= 0)
        {
            int close = page.IndexOf(" -->", begin, StringComparison.Ordinal);
            string name = page[(begin + Begin.Length)..close];
            int end = page.IndexOf(End, close, StringComparison.Ordinal);
            Assert.True(end > 0, $"The part '{name}' has no end marker.");
            Assert.True(parts.ContainsKey(name), $"Nothing is generated for a part '{name}'.");
            filled.Append(page, at, close + 4 - at).Append("\n\n").Append(parts[name]).Append('\n');
            used.Add(name);
            at = end;
        }

        Assert.Equal(parts.Keys.Order(StringComparer.Ordinal), used.Order(StringComparer.Ordinal));
        return filled.Append(page, at, page.Length - at).ToString();
    }

    internal static string Table(TableKeys keys)
    {
        var text = new StringBuilder("| key | takes | without it | meaning |\n| --- | --- | --- | --- |\n");
        foreach (Key key in keys.Keys)
        {
            text.Append("| `").Append(key.Name).Append("` | ").Append(Takes(key)).Append(" | ").Append(Without(key)).Append(" | ").Append(key.Says).Append(" |\n");
        }

        return text.ToString();
    }

    private static string Without(Key key) => key switch
    {
        { IsRequired: true } => "must be given",
        { MetricDefault: { } metric } when metric != key.Default => $"`{key.Default}` (`{metric}` in a job in mm)",
        { Default: { } value } => $"`{value}`",
        _ => key.DefaultSays,
    };

    private static string Takes(Key key) => key.Kind switch
    {
        KeyKind.Text => "text",
        KeyKind.Row => $"a word from `list {key.Unit}`",
        KeyKind.Choice => string.Join(", ", key.Words.Select(w => $"`{w}`")),
        KeyKind.Length => $"a length, {Range(key, "mm")}",
        KeyKind.Size => $"a length or a share of the width, {Range(key, "mm")}",
        KeyKind.Angle => $"an angle, {Range(key, "°")}",
        KeyKind.Feed => $"a feed, {Range(key, "mm/min")}",
        KeyKind.Speed => $"a speed, {Range(key, "rpm")}",
        KeyKind.Number => $"a number, {Range(key, key.Unit)}",
        KeyKind.Whole => $"a whole number, {Range(key, "")}",
        KeyKind.Flag => "`true` or `false`",
        KeyKind.Texts => "a list of texts",
        KeyKind.Table => "a table",
        _ => "one block or more",
    };

    private static string Range(Key key, string unit)
    {
        string Number(double value) => value.ToString("0.######", CultureInfo.InvariantCulture);
        return $"{Number(key.Least)} to {Number(key.Most)} {unit}".TrimEnd();
    }
}
