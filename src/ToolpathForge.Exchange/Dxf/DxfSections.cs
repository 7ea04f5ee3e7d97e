using System.Text;
using ToolpathForge.Exchange.Reading;
using ToolpathForge.Findings;

namespace ToolpathForge.Exchange.Dxf;

/// <summary>Walks through the sections of a file: header, layers, blocks and entities; every other section is passed over.</summary>
internal sealed class DxfSections
{
    private readonly DxfSource _source;
    private readonly ReadingBook _book;
    private readonly DxfTextDecoder _decoder = new();
    private readonly DxfRecord _record;
    private readonly DxfPolylineReader _polylines;
    private readonly DxfContent _content = new();
    private DxfTag _tag;
    private bool _has;
    private int _order;

    private DxfSections(DxfSource source, ReadingBook book)
    {
        _source = source;
        _book = book;
        _record = new DxfRecord(source, _decoder, book);
        _polylines = new DxfPolylineReader(source, _decoder, book);
        Advance();
    }

    internal static DxfContent Read(DxfSource source, ReadingBook book)
    {
        var walk = new DxfSections(source, book);
        walk.File();
        return walk._content;
    }

    private void File()
    {
        bool stray = false;
        while (_has)
        {
            if (Is("EOF"u8))
            {
                return;
            }

            if (Is("SECTION"u8))
            {
                Advance();
                string name = _has && _tag.Code == 2 ? _decoder.Decode(_source.Characters(_tag)) : "";
                Section(name);
            }
            else
            {
                if (!stray && !Is("ENDSEC"u8))
                {
                    _book.Repair(RepairFindings.OutsideSection, _tag.Line);
                    stray = true;
                }

                Advance();
            }
        }

        if (_book.Stopped)
        {
            return;
        }

        if (_source.Broken.Line != 0)
        {
            _book.Repair(RepairFindings.CodeUnreadable, Math.Max(0, _source.Broken.Line), Arg.Of("text", _source.Broken.Text));
        }
        else
        {
            _book.Repair(RepairFindings.CutOff, 0, Arg.Of("what", "what is complete is read"));
        }
    }

    private void Section(string name)
    {
        switch (name)
        {
            case "HEADER":
                Header();
                _decoder.Choose(_content.Version, _content.CodePage);
                break;
            case "TABLES":
                Tables();
                break;
            case "BLOCKS":
                Blocks();
                break;
            case "ENTITIES":
                while (InSection(name))
                {
                    Entity(_content.Entities);
                }

                break;
            default:
                while (InSection(name))
                {
                    Advance();
                }

                break;
        }
    }

    /// <summary>True while at the beginning of something in the section; its end is passed over.</summary>
    private bool InSection(string name)
    {
        while (_has && _tag.Code != 0)
        {
            Advance();
        }

        if (!_has)
        {
            return false;
        }

        if (Is("ENDSEC"u8))
        {
            Advance();
            return false;
        }

        if (Is("SECTION"u8) || Is("EOF"u8))
        {
            _book.Repair(RepairFindings.SectionUnclosed, _tag.Line, Arg.Of("what", name));
            return false;
        }

        return true;
    }

    private void Header()
    {
        ReadOnlySpan<byte> variable = [];
        while (_has && _tag.Code != 0)
        {
            if (_tag.Code == 9)
            {
                variable = _source.Characters(_tag);
            }
            else if (_tag.Code == 1 && variable.SequenceEqual("$ACADVER"u8))
            {
                _content.Version = Encoding.Latin1.GetString(_source.Characters(_tag));
            }
            else if (_tag.Code == 3 && variable.SequenceEqual("$DWGCODEPAGE"u8))
            {
                _content.CodePage = Encoding.Latin1.GetString(_source.Characters(_tag));
            }
            else if (_tag.Code == 70 && variable.SequenceEqual("$INSUNITS"u8) && _source.Number(_tag, out double units))
            {
                _content.InsertUnits = units is >= 0 and <= 1000 ? (int)units : 0;
            }

            Advance();
        }

        _ = InSection("HEADER");
    }

    private void Tables()
    {
        while (InSection("TABLES"))
        {
            if (!Is("LAYER"u8))
            {
                Advance();
                continue;
            }

            if (Gather() && _record.Text(2) is { Length: > 0 } name)
            {
                _content.Layers.Add(new DrawnLayer(name, _record.Or(62, 7) < 0, (_record.Whole(70, 0) & 1) != 0));
            }
        }
    }

    private void Blocks()
    {
        string? name = null;
        var block = new DxfBlock(default, [], false);
        while (InSection("BLOCKS"))
        {
            if (Is("BLOCK"u8))
            {
                Unclosed(name);
                name = null;
                if (Gather())
                {
                    name = _record.Text(2) ?? "";
                    block = new DxfBlock(new Space3(_record.Or(10, 0), _record.Or(20, 0), _record.Or(30, 0)), [], (_record.Whole(70, 0) & 4) != 0);
                    if (!_content.Blocks.TryAdd(name, block))
                    {
                        _book.Repair(RepairFindings.BlockTwice, _record.Line, Arg.Of("what", name));
                    }
                }
            }
            else if (Is("ENDBLK"u8))
            {
                _ = Gather();
                name = null;
            }
            else
            {
                Entity(block.Shapes);
            }
        }

        if (_has)
        {
            Unclosed(name);
        }
    }

    private void Unclosed(string? block)
    {
        if (block is not null)
        {
            _book.Repair(RepairFindings.BlockUnclosed, _tag.Line, Arg.Of("what", block));
        }
    }

    private void Entity(List<DxfShape> into)
    {
        if (!Gather())
        {
            if (!_book.Stopped)
            {
                _book.Repair(RepairFindings.CutOff, _record.Line, Arg.Of("what", $"the last {_record.Kind} may be incomplete and is left out"));
            }

            return;
        }

        if (_record.Kind is "SEQEND" or "ATTRIB" or "VERTEX")
        {
            // These belong to what came before them; a polyline has taken its own.
            return;
        }

        DxfShape? shape = _record.Kind == "POLYLINE" ? Polyline() : DxfEntityReader.Read(_record);
        if (shape is not null)
        {
            into.Add(shape);
            _ = _book.Spend(shape is DxfInsert or DxfOther ? 0 : 1);
        }
    }

    private DxfShape? Polyline()
    {
        _polylines.Begin(_record);
        while (_has && Is("VERTEX"u8))
        {
            if (!Gather())
            {
                _book.Repair(RepairFindings.CutOff, _record.Line, Arg.Of("what", "the last POLYLINE is incomplete and is left out"));
                return null;
            }

            _polylines.Add(_record);
        }

        if (!_has)
        {
            return null;
        }

        if (Is("SEQEND"u8))
        {
            _ = Gather();
        }

        return _polylines.Finish();
    }

    /// <summary>Takes in the record that begins here; false when the file ends before the next begins, so that it may be incomplete.</summary>
    private bool Gather()
    {
        _record.Begin(KindOf(_source.Characters(_tag)), _tag.Line, ++_order);
        Advance();
        while (_has && _tag.Code != 0)
        {
            _record.Add(_tag);
            Advance();
        }

        return _has;
    }

    /// <summary>The frequent kinds need no new text each.</summary>
    private string KindOf(ReadOnlySpan<byte> name) =>
        name.SequenceEqual("LINE"u8) ? "LINE"
        : name.SequenceEqual("ARC"u8) ? "ARC"
        : name.SequenceEqual("VERTEX"u8) ? "VERTEX"
        : name.SequenceEqual("LWPOLYLINE"u8) ? "LWPOLYLINE"
        : name.SequenceEqual("INSERT"u8) ? "INSERT"
        : _decoder.Decode(name);

    private bool Is(ReadOnlySpan<byte> word) => _tag.Code == 0 && _source.Characters(_tag).SequenceEqual(word);

    private void Advance() => _has = _book.Step() && _source.Next(out _tag);
}
