using System.Text;
using System.Xml;
using ToolpathForge.Exchange.Reading;
using ToolpathForge.Findings;

namespace ToolpathForge.Exchange.Svg;

/// <summary>The elements of a file. Nothing but the bytes given is read: no DTD, no entities but the five of XML, no other file.</summary>
internal sealed class SvgDocument
{
    private const string Svg = "http://www.w3.org/2000/svg";
    private const string Link = "http://www.w3.org/1999/xlink";

    private static readonly HashSet<string> s_kept = new(StringComparer.Ordinal)
    {
        "id", "d", "points", "transform", "viewBox", "preserveAspectRatio", "x", "y", "width", "height", "rx", "ry", "r", "cx", "cy", "x1", "y1", "x2", "y2",
        "style", "transform-origin", "display", "visibility", "clip-path", "mask", "class", "type", "media",
    };

    private readonly ReadingBook _book;
    private readonly Dictionary<string, SvgNode> _ids = new(StringComparer.Ordinal);
    private readonly HashSet<string> _twice = new(StringComparer.Ordinal);
    private int _count;

    /// <summary>What the style elements say.</summary>
    internal SvgStyleSheet Sheet { get; } = new();

    private SvgDocument(ReadingBook book) => _book = book;

    /// <summary>The outermost element; null when it is not svg.</summary>
    internal SvgNode? Root { get; private set; }

    /// <summary>What bears an id, the first of several; null for none.</summary>
    internal SvgNode? Find(string id) => _ids.GetValueOrDefault(id);

    /// <summary>Whether several elements bear an id.</summary>
    internal bool IsTwice(string id) => _twice.Contains(id);

    internal static SvgDocument Read(SvgProlog prolog, ReadingBook book)
    {
        var document = new SvgDocument(book);
        var settings = new XmlReaderSettings
        {
            DtdProcessing = DtdProcessing.Prohibit,
            XmlResolver = null,
            IgnoreComments = true,
            IgnoreProcessingInstructions = false,
            IgnoreWhitespace = true,
            MaxCharactersInDocument = book.Limits.Bytes,
        };

        // Many files use the prefix of links without saying what it is.
        var names = new XmlNamespaceManager(new NameTable());
        names.AddNamespace("xlink", Link);
        using var text = new StreamReader(new MemoryStream(prolog.Bytes.ToArray(), false), prolog.Encoding);
        using var reader = XmlReader.Create(text, settings, new XmlParserContext(names.NameTable, names, null, XmlSpace.None));
        try
        {
            document.Elements(reader);
        }
        catch (XmlException e)
        {
            book.Repair(SvgFindings.XmlBroken, Math.Max(e.LineNumber, 0));
        }

        return document;
    }

    private void Elements(XmlReader reader)
    {
        var above = new Stack<SvgNode>();
        var style = new StringBuilder();
        string space = Svg;
        bool more = reader.Read();
        while (more && _book.Step())
        {
            if (reader.NodeType == XmlNodeType.EndElement)
            {
                SvgNode ended = above.Pop();
                if (ended.Name == "style")
                {
                    Style(ended, style.ToString());
                    style.Clear();
                }

                more = reader.Read();
                continue;
            }

            if (reader.NodeType is XmlNodeType.Text or XmlNodeType.CDATA && above.TryPeek(out SvgNode? around) && around.Name == "style")
            {
                style.Append(reader.Value);
            }
            else if (reader.NodeType == XmlNodeType.ProcessingInstruction && reader.Name == "xml-stylesheet")
            {
                Outside(Line(reader));
            }

            if (reader.NodeType != XmlNodeType.Element)
            {
                more = reader.Read();
                continue;
            }

            if (Root is null)
            {
                if (reader.LocalName != "svg" || reader.NamespaceURI is not (Svg or ""))
                {
                    return;
                }

                space = reader.NamespaceURI;
                if (space.Length == 0)
                {
                    _book.Repair(SvgFindings.NoNamespace, Line(reader));
                }
            }

            // What others keep in the file for themselves is none of ours, with all that is in it.
            if (reader.NamespaceURI != space)
            {
                reader.Skip();
                more = !reader.EOF;
                continue;
            }

            bool empty = reader.IsEmptyElement;
            SvgNode node = Node(reader);
            if (above.Count > _book.Limits.Depth)
            {
                _book.Repair(Finding.Of(
                    RepairFindings.TooDeep, _book.At(node.Line), Quantity.Number(above.Count), Quantity.Number(_book.Limits.Depth), Arg.Of("what", node.Shown)));
                reader.Skip();
                more = !reader.EOF;
                continue;
            }

            if (!_book.Spend(1))
            {
                return;
            }

            Keep(node, above);
            if (!empty)
            {
                above.Push(node);
            }

            more = reader.Read();
        }
    }

    private void Style(SvgNode node, string text)
    {
        int before = Sheet.NotApplied;
        bool isCss = (node["type"] ?? "").Trim() is "" || node["type"]!.Trim().Equals("text/css", StringComparison.OrdinalIgnoreCase);
        bool isForAll = (node["media"] ?? "").Trim() is "" or "all" or "screen";
        if (!isCss)
        {
            Sheet.Leave();
        }
        else if (isForAll)
        {
            Sheet.Add(text);
        }
        else
        {
            Sheet.Leave(text);
        }

        StyleLine ??= Sheet.NotApplied > before ? node.Line : null;
    }

    private void Outside(int line)
    {
        Sheet.Leave();
        StyleLine ??= line;
    }

    /// <summary>The line of the first style element that is not applied wholly; null when all are.</summary>
    internal int? StyleLine { get; private set; }

    private void Keep(SvgNode node, Stack<SvgNode> above)
    {
        if (above.TryPeek(out SvgNode? parent))
        {
            parent.Add(node);
        }

        Root ??= node;
        if (node.Id is { } id && !_ids.TryAdd(id, node))
        {
            _twice.Add(id);
        }
    }

    private SvgNode Node(XmlReader reader)
    {
        var node = new SvgNode(reader.LocalName, Line(reader), ++_count) { Sheet = Sheet };
        string? link = null;
        while (reader.MoveToNextAttribute())
        {
            if (reader.NamespaceURI == Link && reader.LocalName == "href")
            {
                link = reader.Value;
            }
            else if (reader.NamespaceURI.Length == 0 && (reader.LocalName == "href" || s_kept.Contains(reader.LocalName)))
            {
                node.Set(reader.LocalName, reader.Value);
            }
        }

        // The link without a prefix is the newer one and counts before the other (SVG 2, 16.1.5).
        if (link is not null)
        {
            node.Set("href", link);
        }

        reader.MoveToElement();
        return node;
    }

    private static int Line(XmlReader reader) => ((IXmlLineInfo)reader).LineNumber;
}
