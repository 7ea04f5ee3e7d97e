namespace ToolpathForge.Tests.Support;

/// <summary>Finds files of the checkout that the tests run from.</summary>
internal static class Repo
{
    internal static string Root { get; } = Find();

    internal static string Path(params string[] parts) => System.IO.Path.Combine([Root, .. parts]);

    private static string Find()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(System.IO.Path.Combine(folder.FullName, "ToolpathForge.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new InvalidOperationException("The tests must run from inside a checkout.");
    }
}
