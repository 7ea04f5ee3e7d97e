using System.Collections.Immutable;
using System.Globalization;
using System.Runtime.InteropServices;
using System.Text;
using ToolpathForge.Exchange.Reading;
using ToolpathForge.Findings;

namespace ToolpathForge.Exchange.Dxf;

/// <summary>The pairs of one record. Questions about values note by themselves what is missing or cannot be read; <see cref="Failed"/> tells that one was.</summary>
internal sealed class DxfRecord(DxfSource source, DxfTextDecoder decoder, ReadingBook book)
{
    private readonly List<DxfTag> _tags = [];
    private byte[] _lastLayer = [];
    private string _lastLayerName = "0";

    internal string Kind { get; private set; } = "";

    internal int Line { get; private set; }

    internal int Order { get; private set; }

    internal string Layer { get; private set; } = "0";

    /// <summary>Whether a question found no usable answer.</summary>
    internal bool Failed { get; private set; }

    internal ReadOnlySpan<DxfTag> Tags => CollectionsMarshal.AsSpan(_tags);

    internal ReadingBook Book => book;

    /// <summary>How a finding calls it.</summary>
    internal string What => $"{Kind} on layer '{Layer}'";

    internal void Begin(string kind, int line, int order, string layer = "0")
    {
        _tags.Clear();
        (Kind, Line, Order, Layer, Failed) = (kind, line, order, layer, false);
    }

    internal void Add(DxfTag tag)
    {
        _tags.Add(tag);
        if (tag.Code == 8)
        {
            ReadOnlySpan<byte> name = source.Characters(tag);
            if (!name.SequenceEqual(_lastLayer))
            {
                _lastLayer = name.ToArray();
                _lastLayerName = decoder.Decode(name);
            }

            Layer = _lastLayerName.Length > 0 ? _lastLayerName : "0";
        }
    }

    internal DxfHead Head() => new(Kind, Layer, Line, Order, Or(60, 0) == 1, Or(67, 0) == 1);

    /// <summary>The first text under a code; null without one.</summary>
    internal string? Text(int code) => Find(code) is { } tag ? decoder.Decode(source.Characters(tag)) : null;

    /// <summary>The first number under a code, or what stands for it when there is none.</summary>
    internal double Or(int code, double otherwise) => Find(code) is { } tag ? Number(tag) : otherwise;

    /// <summary>The first number under a code, which must be there.</summary>
    internal double Need(int code, string name)
    {
        if (Find(code) is { } tag)
        {
            return Number(tag);
        }

        Fail(RepairFindings.ValueMissing, Arg.Of("key", name));
        return 0;
    }

    internal int Whole(int code, int otherwise) => (int)Math.Clamp(Or(code, otherwise), int.MinValue, int.MaxValue);

    /// <summary>The point under a code and ten and twenty on; x and y must be there.</summary>
    internal Space3 NeedPoint(int code, string name) => new(Need(code, name), Need(code + 10, name), Or(code + 20, 0));

    /// <summary>The direction in which an entity is extruded.</summary>
    internal Space3 Extrusion()
    {
        var direction = new Space3(Or(210, 0), Or(220, 0), Or(230, 1));
        double length = direction.Length;
        if (!Failed && !(length > 1e-9 && length < 1e9))
        {
            Fail(RepairFindings.ValueUnusable, Arg.Of("key", "extrusion direction"), Arg.Of("text", length.ToString("G4", CultureInfo.InvariantCulture) + " in length"));
        }

        return direction;
    }

    /// <summary>Reads a number and takes note of what is none.</summary>
    internal double Number(DxfTag tag)
    {
        if (source.Number(tag, out double value))
        {
            return value;
        }

        ReadOnlySpan<byte> text = source.Characters(tag);
        int comma = text.IndexOf((byte)',');
        if (comma >= 0)
        {
            byte[] point = text.ToArray();
            point[comma] = (byte)'.';
            if (DxfReal.TryParse(point, out value))
            {
                book.Repair(RepairFindings.NumberComma, tag.Line, Arg.Of("text", Encoding.Latin1.GetString(text)));
                return value;
            }
        }

        string shown = tag.Length < 0 ? tag.Number.ToString(CultureInfo.InvariantCulture) : decoder.Decode(text[..Math.Min(text.Length, 40)]);
        Failed = true;
        book.Repair(RepairFindings.NumberUnreadable, tag.Line, Arg.Of("what", What), Arg.Of("text", shown));
        return 0;
    }

    internal void Fail(FindingKind kind, params ImmutableArray<Arg> more)
    {
        // One reason is enough.
        if (!Failed)
        {
            Tell(kind, more);
        }

        Failed = true;
    }

    internal void Tell(FindingKind kind, params ImmutableArray<Arg> more) => book.Repair(kind, Line, [Arg.Of("what", What), .. more]);

    private DxfTag? Find(int code)
    {
        foreach (DxfTag tag in _tags)
        {
            if (tag.Code == code)
            {
                return tag;
            }
        }

        return null;
    }
}
