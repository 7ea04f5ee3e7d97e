using System.Runtime.InteropServices;
using System.Text;

namespace ToolpathForge.Plugin.Client;

/// <summary>The program that is the core, and how it is called.</summary>
public sealed class CoreCommand
{
    /// <summary>The environment variable that names the core's file, where no path is given.</summary>
    public const string Variable = "TOOLPATHFORGE_CORE";

    private const string Name = "toolpathforge";

    /// <summary>Makes one.</summary>
    /// <param name="file">The program's file.</param>
    /// <param name="arguments">Its arguments, as they are to arrive.</param>
    public CoreCommand(string file, params string[] arguments)
    {
        File = file;
        Arguments = arguments;
    }

    /// <summary>The program's file.</summary>
    public string File { get; }

    /// <summary>Its arguments, as they are to arrive.</summary>
    public IReadOnlyList<string> Arguments { get; }

    /// <summary>
    /// Looks for the core: at the path, if one is given; else at the path that <see cref="Variable"/> gives, if it gives one; else beside this DLL; else in the folders of
    /// PATH. What is named but isn't there is an error, so that no other core is taken without a word.
    /// </summary>
    /// <param name="path">Its file; null to look for it.</param>
    /// <exception cref="CoreException">There is none.</exception>
    public static CoreCommand Find(string? path = null) =>
        Find(path, Environment.GetEnvironmentVariable(Variable), Path.GetDirectoryName(typeof(CoreCommand).Assembly.Location), Environment.GetEnvironmentVariable("PATH"));

    internal static CoreCommand Find(string? path, string? variable, string? beside, string? searched)
    {
        foreach ((string? named, string by) in new[] { (path, "the settings of the plugin"), (variable, "the environment variable " + Variable) })
        {
            if (named is { Length: > 0 })
            {
                return System.IO.File.Exists(named)
                    ? Of(named)
                    : throw new CoreException(CoreFailure.NotFound, "There is no file '" + named + "', which " + by + " names as the core. Put the path right.");
            }
        }

        var folders = new List<string>();
        if (beside is { Length: > 0 })
        {
            folders.Add(beside);
        }

        folders.AddRange((searched ?? "").Split(new[] { Path.PathSeparator }, StringSplitOptions.RemoveEmptyEntries));
        foreach (string folder in folders)
        {
            foreach (string file in RuntimeInformation.IsOSPlatform(OSPlatform.Windows) ? new[] { Name + ".exe" } : new[] { Name })
            {
                try
                {
                    string full = Path.Combine(folder.Trim('"'), file);
                    if (System.IO.File.Exists(full))
                    {
                        return Of(full);
                    }
                }
                catch (ArgumentException)
                {
                    // A folder of PATH that is none.
                }
            }
        }

        throw new CoreException(CoreFailure.NotFound, "ToolpathForge was not found. Install it, or name its file in the environment variable " + Variable + ".");
    }

    // A DLL needs the runtime's own starter before it.
    private static CoreCommand Of(string file) =>
        file.EndsWith(".dll", StringComparison.OrdinalIgnoreCase) ? new CoreCommand("dotnet", file, "host") : new CoreCommand(file, "host");

    /// <summary>
    /// The arguments as one line, quoted as every runtime takes them apart again: in double quotes, a quote after a backslash, backslashes doubled before a quote.
    /// </summary>
    internal string Line()
    {
        var line = new StringBuilder();
        foreach (string argument in Arguments)
        {
            line.Append(line.Length > 0 ? " \"" : "\"");
            int slashes = 0;
            foreach (char c in argument)
            {
                if (c == '"')
                {
                    line.Append('\\', slashes + 1);
                }

                slashes = c == '\\' ? slashes + 1 : 0;
                line.Append(c);
            }

            line.Append('\\', slashes).Append('"');
        }

        return line.ToString();
    }
}
