using ToolpathForge.Catalogue;
using ToolpathForge.Findings;
using ToolpathForge.Measures;
using ToolpathForge.Tables;

namespace ToolpathForge.Jobs;

/// <summary>Resolves the ids that a job writes to rows of the catalogues.</summary>
internal static class RowLookup
{
    private const int MostListed = 30;

    /// <summary>The row that a key names; null when the key is missing (which has been told) or names none.</summary>
    internal static T? Find<T>(Fields fields, string key, string catalogue, Rows<T> rows, TableContext context)
        where T : class
    {
        if (!fields.Has(key))
        {
            return null;
        }

        string id = fields.Text(key);
        // Ids keep the spelling they were first written in; the American one is taken for it.
        if ((rows.Find(id) ?? rows.Find(id.Replace("center", "centre", StringComparison.Ordinal))) is { } row)
        {
            return row;
        }

        var name = Arg.Of("key", key);
        var text = Arg.Of("text", TextPiece.Short(id));
        var where = Arg.Of("catalogue", catalogue);
        string words = string.Join(", ", rows.Ids.Take(MostListed)) + (rows.All.Length > MostListed ? " and more" : "");
        context.Add(NearWord.Find(id, rows.Ids) is { } near
            ? Finding.Of(JobFindings.UnknownRowNear, fields.Where(key), name, text, where, Arg.Of("near", near))
            : Finding.Of(JobFindings.UnknownRow, fields.Where(key), name, text, where, Arg.Of("words", words)));
        return null;
    }
}
