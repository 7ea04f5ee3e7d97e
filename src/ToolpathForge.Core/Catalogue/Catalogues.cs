using System.Collections.Immutable;
using System.Globalization;
using ToolpathForge.Findings;

namespace ToolpathForge.Catalogue;

/// <summary>The rows of one catalogue, in the order of their files.</summary>
/// <typeparam name="T">The kind of row.</typeparam>
public sealed class Rows<T>
    where T : class
{
    private readonly Func<T, string> _idOf;
    private readonly ImmutableDictionary<string, T> _byId;

    internal Rows(ImmutableArray<T> all, Func<T, string> idOf)
    {
        All = all;
        _idOf = idOf;
        _byId = all.ToImmutableDictionary(idOf, StringComparer.Ordinal);
    }

    /// <summary>Every row, those of later files behind, each id once.</summary>
    public ImmutableArray<T> All { get; }

    /// <summary>The ids, in the same order.</summary>
    public IEnumerable<string> Ids => All.Select(_idOf);

    /// <summary>The row of an id; null when there is none.</summary>
    /// <param name="id">The id, exactly as written.</param>
    public T? Find(string id) => _byId.GetValueOrDefault(id);

    /// <summary>
    /// The row that a person means at a keyboard: the id as written; else the one whose words, between hyphens, are the same in another order
    /// (<c>1/4-upcut</c> for <c>upcut-1/4</c>); else the only one that has them all among its own (<c>fir</c> for <c>douglas-fir</c>). Null when there is
    /// none, or more than one: nothing is guessed. A job's file must write ids exactly.
    /// </summary>
    /// <param name="text">What was typed.</param>
    public T? FindLoosely(string text)
    {
        if (Find(text) is { } exact)
        {
            return exact;
        }

        string[] words = text.Split('-', StringSplitOptions.RemoveEmptyEntries);
        T[] holding = [.. All.Where(r => words.Length > 0 && words.All(w => Array.Exists(Words(r), own => own == w)))];
        T[] same = [.. holding.Where(r => Words(r).Length == words.Length)];
        return same.Length == 1 ? same[0] : same.Length == 0 && holding.Length == 1 ? holding[0] : null;
    }

    private string[] Words(T row) => _idOf(row).Split('-');

    // A later row takes the place of an earlier one of the same id, so that lists keep their order.
    internal Rows<T> With(IEnumerable<T> later)
    {
        List<T> rows = [.. All];
        foreach (T row in later)
        {
            int at = rows.FindIndex(r => _idOf(r) == _idOf(row));
            if (at < 0)
            {
                rows.Add(row);
            }
            else
            {
                rows[at] = row;
            }
        }

        return new Rows<T>([.. rows], _idOf);
    }
}

/// <summary>Every catalogue: the shipped rows, and those of the files that a job names on top.</summary>
/// <param name="Lumber">Dressed sizes.</param>
/// <param name="Panels">Panels.</param>
/// <param name="Bits">Bits.</param>
/// <param name="Materials">Materials.</param>
/// <param name="Machines">Machines.</param>
/// <param name="Dialects">Dialects of G-code.</param>
public sealed record Catalogues(
    Rows<Lumber> Lumber,
    Rows<Panel> Panels,
    Rows<Bit> Bits,
    Rows<Material> Materials,
    Rows<Machine> Machines,
    Rows<Dialect> Dialects)
{
    private static readonly Lazy<Catalogues> LazyShipped = new(ReadShipped);

    /// <summary>What ships with the program, read from the files inside the assembly on first use.</summary>
    public static Catalogues Shipped => LazyShipped.Value;

    internal static Catalogues Empty { get; } = new(
        new([], r => r.Id), new([], r => r.Id), new([], r => r.Id), new([], r => r.Id), new([], r => r.Id), new([], r => r.Id));

    /// <summary>The names of the shipped files inside the assembly, in order.</summary>
    internal static ImmutableArray<string> ShippedFiles { get; } =
    [
        .. typeof(Catalogues).Assembly.GetManifestResourceNames()
            .Where(n => n.EndsWith(".toml", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal),
    ];

    /// <summary>The text of a shipped file.</summary>
    internal static string ShippedText(string name)
    {
        using Stream stream = typeof(Catalogues).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"{name} is not in the assembly.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }

    /// <summary>These catalogues with the rows of a file on top; rows with faults are left out and reported.</summary>
    /// <param name="text">The file's text.</param>
    /// <param name="file">Its name.</param>
    /// <param name="findings">Takes what is wrong.</param>
    public Catalogues With(string text, string file, ICollection<Finding> findings) => CatalogueReader.Read(this, text, file, findings);

    private static Catalogues ReadShipped()
    {
        var findings = new List<Finding>();
        Catalogues all = ShippedFiles.Aggregate(Empty, (rows, name) => rows.With(ShippedText(name), name, findings));
        return findings.Count == 0
            ? all
            : throw new InvalidOperationException(string.Create(
                CultureInfo.InvariantCulture, $"{findings[0].Place.File}, line {findings[0].Place.Line}: {findings[0].Kind.Code}."));
    }
}
