using System.Collections.Immutable;
using ToolpathForge.Findings;

namespace ToolpathForge.Service.Files;

/// <summary>Writes one new file, whole or not at all.</summary>
internal static class NewFile
{
    /// <summary>Writes it; a finding says why not.</summary>
    /// <param name="path">The file.</param>
    /// <param name="text">What stands in it.</param>
    /// <param name="isOurs">Whether the text of a file that is there already shows that it may be replaced; null for never.</param>
    internal static Finding? Write(string path, string text, Func<string, bool>? isOurs = null)
    {
        Finding Told(FindingKind kind, params ImmutableArray<Arg> more) => Finding.Of(kind, Place.InFile(path, 0, 0), more);
        try
        {
            if (Directory.Exists(path))
            {
                return Told(FileFindings.IsFolder);
            }

            // The new file appears whole: it is written under another name and then given its own, which the system refuses where one exists.
            string full = Path.GetFullPath(path);
            string draft = Path.Combine(Path.GetDirectoryName(full)!, $".{Path.GetFileName(full)}.toolpathforge-new");
            bool replace = false;
            if (File.Exists(full))
            {
                replace = isOurs is not null && isOurs(File.ReadAllText(full));
                if (!replace)
                {
                    return Told(FileFindings.Exists);
                }
            }

            File.WriteAllText(draft, text);
            try
            {
                File.Move(draft, full, replace);
                return null;
            }
            catch (IOException) when (!replace && File.Exists(full))
            {
                File.Delete(draft);
                return Told(FileFindings.Exists);
            }
        }
        catch (DirectoryNotFoundException)
        {
            return Told(FileFindings.NoFolder);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return Told(FileFindings.CannotWrite, Arg.Of("reason", Refusal.Of(e)));
        }
    }
}
