using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using Tomlyn;
using Tomlyn.Parsing;
using Tomlyn.Syntax;
using ToolpathForge.Findings;
using ToolpathForge.Measures;

namespace ToolpathForge.Tables;

/// <summary>Turns TOML text into a tree of values with places. All faults of the text are reported in one go.</summary>
internal static partial class TomlText
{
    /// <summary>Longest file that is read: far beyond any job, and far below what would be slow.</summary>
    internal const int MostCharacters = 1_000_000;

    /// <summary>Reads a text.</summary>
    /// <param name="text">The text.</param>
    /// <param name="file">The file's name, for places.</param>
    /// <param name="findings">Takes what is wrong.</param>
    /// <returns>The root table: what could be read, even beside faults; null when nothing could.</returns>
    internal static TableValue? Read(string text, string file, ICollection<Finding> findings)
    {
        if (text.Length > MostCharacters)
        {
            findings.Add(Finding.Of(
                TableFindings.FileTooLarge, Place.InFile(file, 1, 1), Quantity.Number(text.Length), Quantity.Number(MostCharacters)));
            return null;
        }

        text = CurlyQuotes.MadeStraight(text.StartsWith('\uFEFF') ? text[1..] : text);
        DocumentSyntax document;
        try
        {
            document = SyntaxParser.Parse(text, file, validate: false);
        }
        catch (TomlException fault)
        {
            // The parser gives up on nesting that is deeper than any sane file's.
            int line = fault.Line is > 0 and int l ? l : 1;
            int column = fault.Column is > 0 and int c ? c : 1;
            findings.Add(Finding.Of(TableFindings.Syntax, Place.InFile(file, line, column), Arg.Of("problem", "it is nested too deeply")));
            return null;
        }

        if (UnclosedQuote(document, text, file) is { } unclosed)
        {
            // Everything after it is read inside out: what the rest seems to get wrong says nothing about it.
            findings.Add(unclosed);
            return null;
        }

        Report(document, text, file, findings);
        var root = new TableBuilder(Place.InFile(file, 1, 1));
        var reader = new DocumentReader(file, [.. document.Diagnostics.Where(m => m.Kind == DiagnosticMessageKind.Error).Select(m => m.Span.Start.Line)], findings);
        reader.Fill(root, document.KeyValues);
        foreach (TableSyntaxBase table in document.Tables)
        {
            if (table.Name is not null)
            {
                reader.Fill(reader.Open(root, table), table.Items);
            }
        }

        return root.Build();
    }

    // A text that does not end on its line; or one that ends at the quote that should begin the next, which leaves an odd quote over.
    private static Finding? UnclosedQuote(DocumentSyntax document, string text, string file)
    {
        DiagnosticMessage? first = document.Diagnostics
            .Where(m => m.Kind == DiagnosticMessageKind.Error && !IsEcho(m, document)).OrderBy(m => m.Span.Start.Offset).FirstOrDefault();
        return first is not null && (UnclosedText().IsMatch(first.Message) || (Quotes(text, first.Span.Start.Line) & 1) == 1)
            ? Finding.Of(TableFindings.QuoteNotClosed, Place.InFile(file, first.Span.Start.Line + 1, first.Span.Start.Column + 1))
            : null;
    }

    private static int Quotes(string text, int line)
    {
        string[] lines = text.Split('\n');
        return line < lines.Length ? lines[line].Replace("\\\"", "", StringComparison.Ordinal).Count(c => c == '"') : 0;
    }

    // A fault often draws others after it on its line; the first one of a line is told.
    private static void Report(DocumentSyntax document, string text, string file, ICollection<Finding> findings)
    {
        string[] lines = text.Split('\n');
        int lineBefore = -1;
        foreach (DiagnosticMessage message in document.Diagnostics
            .Where(m => m.Kind == DiagnosticMessageKind.Error)
            .OrderBy(m => m.Span.Start.Offset).ThenBy(m => m.Message, StringComparer.Ordinal))
        {
            int line = message.Span.Start.Line;
            if (line == lineBefore || IsEcho(message, document))
            {
                continue;
            }

            lineBefore = line;
            var place = Place.InFile(file, line + 1, message.Span.Start.Column + 1);
            string written = line < lines.Length ? lines[line] : "";
            Match bare = BareValue().Match(written);
            if (bare.Success && !AcceptedBare().IsMatch(bare.Groups["text"].Value))
            {
                findings.Add(Finding.Of(
                    TableFindings.QuotesMissing,
                    place with { Column = bare.Groups["text"].Index + 1 },
                    Arg.Of("key", bare.Groups["key"].Value),
                    Arg.Of("text", TextPiece.Short(bare.Groups["text"].Value))));
            }
            else
            {
                string problem = TokenName().Replace(message.Message, "").Replace("␤", "the end of the line", StringComparison.Ordinal);
                findings.Add(Finding.Of(TableFindings.Syntax, place, Arg.Of("problem", char.ToLowerInvariant(problem[0]) + problem[1..].TrimEnd('.'))));
            }
        }
    }

    // At the end of a file the parser tells once where it stopped and once more at the very beginning.
    private static bool IsEcho(DiagnosticMessage message, DocumentSyntax document) =>
        message.Span.Start.Offset == 0 && document.Diagnostics.Count > 1 && message.Message.Contains("<eof>", StringComparison.Ordinal);

    [GeneratedRegex("""^\s*(?<key>[A-Za-z0-9_.-]+)\s*=\s*(?<text>[^\s"'\[{#][^#\r]*?)\s*(#.*)?\r?$""", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex BareValue();

    [GeneratedRegex(@"^([+-]?[0-9_.]+([eE][+-]?[0-9]+)?|true|false)$", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex AcceptedBare();

    [GeneratedRegex(@"(invalid newline|End-Of-File found).*string", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex UnclosedText();

    [GeneratedRegex(@"\s*\(token: `[^`]*`\)", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex TokenName();
}

/// <summary>Walks the parsed document and builds tables.</summary>
/// <param name="file">The file's name, for places.</param>
/// <param name="faults">The lines that break the rules, from 0.</param>
/// <param name="findings">Takes what is wrong.</param>
internal sealed class DocumentReader(string file, int[] faults, ICollection<Finding> findings)
{
    /// <summary>The table that a header opens; a doubled header opens a new one at the end of its list.</summary>
    internal TableBuilder Open(TableBuilder root, TableSyntaxBase header)
    {
        (string Name, Place At)[] path = [.. Path(header.Name!)];
        Place at = At(header);
        TableBuilder table = root;
        for (int i = 0; i < path.Length - 1; i++)
        {
            table = table.Inner(path[i].Name, at, header: true) ?? Lost(path[i].Name, path[i].At, table);
        }

        (string last, Place lastAt) = path[^1];
        TableBuilder? opened = header is TableArraySyntax ? table.NewInList(last, at) : table.OpenOnce(last, at);
        return opened ?? Lost(last, lastAt, table);
    }

    /// <summary>Adds keys and values to a table.</summary>
    internal void Fill(TableBuilder table, SyntaxList<KeyValueSyntax> items)
    {
        foreach (KeyValueSyntax item in items)
        {
            Add(table, item);
        }
    }

    private void Add(TableBuilder table, KeyValueSyntax item)
    {
        if (item.Key is null || Value(item.Value) is not { } value)
        {
            return;
        }

        (string Name, Place At)[] path = [.. Path(item.Key)];
        foreach ((string name, Place at) in path[..^1])
        {
            table = table.Inner(name, at, header: false) ?? Lost(name, at, table);
        }

        (string last, Place lastAt) = path[^1];
        if (!table.Set(last, lastAt, value))
        {
            Lost(last, lastAt, table);
        }
    }

    // What follows goes into a table that nobody reads; the fault has been told.
    private TableBuilder Lost(string name, Place at, TableBuilder table)
    {
        findings.Add(Finding.Of(
            TableFindings.KeyTwice,
            at,
            Arg.Of("key", TextPiece.Short(name)),
            Arg.Of("line", table.PlaceOf(name).Line.ToString(CultureInfo.InvariantCulture))));
        return new TableBuilder(at);
    }

    private IEnumerable<(string Name, Place At)> Path(KeySyntax key)
    {
        yield return (NameOf(key.Key), At(key.Key ?? (SyntaxNode)key));
        foreach (DottedKeyItemSyntax part in key.DotKeys)
        {
            yield return (NameOf(part.Key), At(part.Key ?? (SyntaxNode)part));
        }
    }

    private static string NameOf(BareKeyOrStringValueSyntax? key) => key switch
    {
        BareKeySyntax bare => bare.Key?.Text ?? "",
        StringValueSyntax quoted => quoted.Value ?? "",
        _ => "",
    };

    private TomlValue? Value(ValueSyntax? value)
    {
        switch (value)
        {
            case StringValueSyntax text when Array.Exists(faults, line => line >= text.Span.Start.Line && line <= text.Span.End.Line):
                // What the parser makes of it is not what is written: it might name another file.
                return null;
            case StringValueSyntax text:
                return new TextValue(text.Value ?? "", text.Token?.Text ?? "", At(text));
            case IntegerValueSyntax whole:
                return new NumberValue(whole.Value, true, whole.Token?.Text ?? "", At(whole));
            case FloatValueSyntax number:
                return new NumberValue(number.Value, false, number.Token?.Text ?? "", At(number));
            case BooleanValueSyntax flag:
                return new FlagValue(flag.Value, At(flag));
            case DateTimeValueSyntax date:
                return new DateValue(At(date));
            case ArraySyntax list:
                return new ListValue([.. list.Items.Select(i => Value(i.Value)).OfType<TomlValue>()], At(list));
            case InlineTableSyntax braces:
                var table = new TableBuilder(At(braces));
                foreach (InlineTableItemSyntax item in braces.Items)
                {
                    if (item.KeyValue is not null)
                    {
                        Add(table, item.KeyValue);
                    }
                }

                return table.Build();
            default:
                return null;
        }
    }

    private Place At(SyntaxNode node) => Place.InFile(file, node.Span.Start.Line + 1, node.Span.Start.Column + 1);
}
