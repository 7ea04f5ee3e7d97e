using System.Net;
using System.Text;

namespace ToolpathForge.RunSheets;

/// <summary>Puts together HTML; every text is encoded on its way in.</summary>
internal sealed class Html
{
    private readonly StringBuilder _text = new();

    public override string ToString() => _text.ToString();

    internal static string Encode(string text) => WebUtility.HtmlEncode(text);

    /// <summary>Markup of our own, as it is.</summary>
    internal Html Raw(string markup)
    {
        _text.Append(markup).Append('\n');
        return this;
    }

    /// <summary>An element with text in it.</summary>
    internal Html Element(string tag, string text, string? kind = null)
    {
        _text.Append('<').Append(tag);
        if (kind is not null)
        {
            _text.Append(" class=\"").Append(kind).Append('"');
        }

        _text.Append('>').Append(Encode(text)).Append("</").Append(tag).Append(">\n");
        return this;
    }

    /// <summary>A list, numbered or not.</summary>
    internal Html List(bool numbered, IEnumerable<string> items)
    {
        string tag = numbered ? "ol" : "ul";
        _text.Append('<').Append(tag).Append(">\n");
        foreach (string item in items)
        {
            Element("li", item);
        }

        _text.Append("</").Append(tag).Append(">\n");
        return this;
    }

    /// <summary>A table with a head line; a cell that begins with a digit, a sign or a fraction is set as a figure.</summary>
    internal Html Table(IReadOnlyList<string> head, IEnumerable<IReadOnlyList<string>> rows)
    {
        _text.Append("<table>\n<thead><tr>");
        foreach (string cell in head)
        {
            _text.Append("<th scope=\"col\">").Append(Encode(cell)).Append("</th>");
        }

        _text.Append("</tr></thead>\n<tbody>\n");
        foreach (IReadOnlyList<string> row in rows)
        {
            _text.Append("<tr>");
            foreach (string cell in row)
            {
                _text.Append("<td>").Append(Encode(cell)).Append("</td>");
            }

            _text.Append("</tr>\n");
        }

        _text.Append("</tbody>\n</table>\n");
        return this;
    }

    /// <summary>Pairs of a term and what it is.</summary>
    internal Html Facts(params IEnumerable<(string Term, string Value)> facts)
    {
        _text.Append("<dl>\n");
        foreach ((string term, string value) in facts)
        {
            _text.Append("<dt>").Append(Encode(term)).Append("</dt><dd>").Append(Encode(value)).Append("</dd>\n");
        }

        _text.Append("</dl>\n");
        return this;
    }
}
