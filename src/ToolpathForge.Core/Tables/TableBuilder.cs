using ToolpathForge.Findings;

namespace ToolpathForge.Tables;

/// <summary>
/// A table while the file is being read: headers may come back to it until the end. Which ways of coming back TOML allows is decided here: a
/// table may be opened by one header only, dotted keys may not reach into a table of a header, and a value is set once.
/// </summary>
internal sealed class TableBuilder(Place at)
{
    private readonly List<Slot> _slots = [];
    private readonly Dictionary<string, Slot> _byName = new(StringComparer.Ordinal);
    private bool _opened;

    /// <summary>The table below a name on the way to another: made if need be. Null when the name holds something else.</summary>
    internal TableBuilder? Inner(string name, Place at, bool header)
    {
        if (!_byName.TryGetValue(name, out Slot? slot))
        {
            var inner = new TableBuilder(at);
            Keep(new Slot(name, at) { Table = inner });
            return inner;
        }

        if (slot.List is { } list)
        {
            return header ? list[^1] : null;
        }

        return slot.Table is { } table && (header || !table._opened) ? table : null;
    }

    /// <summary>The table of a single header. Null when it was opened before or holds something else.</summary>
    internal TableBuilder? OpenOnce(string name, Place at)
    {
        if (_byName.TryGetValue(name, out Slot? slot) && (slot.Table is null || slot.Table._opened || slot.Table._slots.Exists(s => s.Value is not null)))
        {
            return null;
        }

        TableBuilder? table = Inner(name, at, header: true);
        if (table is not null)
        {
            table._opened = true;
        }

        return table;
    }

    /// <summary>A new table at the end of a doubled header's list. Null when the name holds something else.</summary>
    internal TableBuilder? NewInList(string name, Place at)
    {
        var table = new TableBuilder(at) { _opened = true };
        if (!_byName.TryGetValue(name, out Slot? slot))
        {
            Keep(new Slot(name, at) { List = [table] });
            return table;
        }

        slot.List?.Add(table);
        return slot.List is null ? null : table;
    }

    /// <summary>Sets a value; false when the name is taken.</summary>
    internal bool Set(string name, Place at, TomlValue value)
    {
        if (_byName.ContainsKey(name))
        {
            return false;
        }

        Keep(new Slot(name, at) { Value = value });
        return true;
    }

    /// <summary>Where a name was first written.</summary>
    internal Place PlaceOf(string name) => _byName.TryGetValue(name, out Slot? slot) ? slot.At : at;

    /// <summary>The finished table.</summary>
    internal TableValue Build() => new(
        [.. _slots.Select(s => new TableEntry(s.Name, s.At, s.Value ?? s.Table?.Build() ?? (TomlValue)new ListValue([.. s.List!.Select(t => t.Build())], s.At)))],
        at);

    private void Keep(Slot slot)
    {
        _slots.Add(slot);
        _byName.Add(slot.Name, slot);
    }

    private sealed class Slot(string name, Place at)
    {
        internal string Name => name;

        internal Place At => at;

        internal TomlValue? Value { get; init; }

        internal TableBuilder? Table { get; init; }

        internal List<TableBuilder>? List { get; init; }
    }
}
