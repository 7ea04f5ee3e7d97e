using System.Reflection;
using ToolpathForge.Tests.Structure.Planted.Lower;

namespace ToolpathForge.Tests.Structure;

/// <summary>Holds the arrows of the design: which project, and inside the core which folder, may use which.</summary>
public class ArrowTests
{
    /// <summary>The core's folders in order: each may use those before it.</summary>
    private static readonly string[] Order =
    [
        "Findings", "Measures", "Wording", "Tables", "Geometry", "Lettering", "Drawings", "Catalogue", "Shapes", "Jobs", "Schedules", "Pieces", "Nesting", "MarkingOut", "Clampings", "Cutting", "Checks",
        "Posting", "Planning", "RunSheets",
    ];

    private static string Path(string assembly) => System.IO.Path.Combine(AppContext.BaseDirectory, assembly + ".dll");

    /// <summary>The folder below a root namespace; null for what lies elsewhere.</summary>
    private static string? Folder(string root, string space) =>
        space.StartsWith(root + ".", StringComparison.Ordinal) ? space[(root.Length + 1)..].Split('.')[0] : null;

    private static string[] AgainstTheOrder(IEnumerable<TypeUse> uses, string root, string[] order) =>
    [
        .. uses.Where(use => Array.IndexOf(order, Folder(root, use.FromNamespace)) is >= 0 and var at && Array.IndexOf(order, Folder(root, use.ToNamespace)) > at)
            .Select(use => $"{Folder(root, use.FromNamespace)}/{use.From} uses {Folder(root, use.ToNamespace)}/{use.To}")
            .Order(StringComparer.Ordinal),
    ];

    [Fact]
    public void Every_planted_violation_is_seen()
    {
        IReadOnlySet<TypeUse> uses = TypeUses.Of(typeof(ArrowTests).Assembly.Location);
        string[] seen = AgainstTheOrder(uses, "ToolpathForge.Tests.Structure.Planted", ["Lower", "Upper"]);
        foreach (Type type in typeof(Innocent).Assembly.GetTypes().Where(t => t.Namespace == typeof(Innocent).Namespace && !t.IsNested))
        {
            Assert.Equal(type != typeof(Innocent), Array.Exists(seen, s => s.Split('/', ' ', '+')[1] == type.Name));
        }

        Assert.Empty(AgainstTheOrder(uses, "ToolpathForge.Tests.Structure.Planted", ["Upper", "Lower"]));
    }

    [Fact]
    public void Folders_of_the_core_use_only_those_above_them()
    {
        string[] against = AgainstTheOrder(TypeUses.Of(Path("ToolpathForge.Core")), "ToolpathForge", Order);
        Assert.True(against.Length == 0, string.Join('\n', against));
    }

    [Fact]
    public void Every_folder_of_the_core_has_its_place_in_the_order_and_its_namespace()
    {
        string core = Support.Repo.Path("src", "ToolpathForge.Core");
        foreach (string folder in Directory.EnumerateDirectories(core).Select(f => System.IO.Path.GetFileName(f)!).Where(f => f is not ("bin" or "obj")))
        {
            Assert.Contains(folder, Order, StringComparer.Ordinal);
            foreach (string file in Directory.EnumerateFiles(System.IO.Path.Combine(core, folder), "*.cs", SearchOption.AllDirectories))
            {
                string? line = File.ReadLines(file).FirstOrDefault(l => l.StartsWith("namespace ", StringComparison.Ordinal));
                Assert.True(line is null || Folder("ToolpathForge", line["namespace ".Length..].TrimEnd(';')) == folder, $"{file}: {line}");
            }
        }
    }

    [Fact]
    public void Only_planning_calls_the_checks_and_only_planning_and_the_run_sheet_know_the_proof()
    {
        TypeUse[] uses = [.. TypeUses.Of(Path("ToolpathForge.Core"))];
        string Offenders(string to, params string[] may) => string.Join('\n', uses
            .Where(u => Folder("ToolpathForge", u.ToNamespace) == to && Folder("ToolpathForge", u.FromNamespace) is { } from && from != to && !may.Contains(from, StringComparer.Ordinal))
            .Select(u => $"{u.FromNamespace}.{u.From} uses {u.To}").Order(StringComparer.Ordinal));
        Assert.Equal("", Offenders("Checks", "Planning"));
        Assert.Equal("", Offenders("Proof", "Planning", "RunSheets"));
    }

    [Theory]
    [InlineData("ToolpathForge.Proof", "")]
    [InlineData("ToolpathForge.Plugin", "")]
    [InlineData("ToolpathForge.Core", "Proof")]
    [InlineData("ToolpathForge.Exchange", "Core")]
    [InlineData("ToolpathForge.Service", "Core Proof Exchange Plugin")]
    [InlineData("toolpathforge", "Service")]
    public void Projects_use_only_what_the_design_lets_them(string assembly, string may)
    {
        string[] allowed = [.. may.Split(' ').Select(n => "ToolpathForge." + n)];
        Assert.All(TypeUses.Assemblies(Path(assembly)).Where(n => n.StartsWith("ToolpathForge", StringComparison.OrdinalIgnoreCase)), n => Assert.Contains(n, allowed, StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("ToolpathForge.Proof", "System.")]
    [InlineData("ToolpathForge.Plugin", "netstandard")]
    public void The_proof_and_the_plugin_stand_on_the_base_library_alone(string assembly, string library)
    {
        Assert.All(TypeUses.Assemblies(Path(assembly)), n => Assert.StartsWith(library, n, StringComparison.Ordinal));
        Assembly loaded = Assembly.LoadFrom(Path(assembly));
        Assert.Equal(assembly, loaded.GetName().Name);
    }

    // Drawings, jobs and catalogues come in as bytes or through a door that the caller opens: so nothing that a file says can make these read another one.
    [Theory]
    [InlineData("ToolpathForge.Proof")]
    [InlineData("ToolpathForge.Core")]
    [InlineData("ToolpathForge.Exchange")]
    public void What_reads_drawings_and_jobs_opens_no_file_and_no_connection(string assembly)
    {
        string[] doors = ["File", "FileInfo", "FileStream", "FileSystemInfo", "Directory", "DirectoryInfo", "RandomAccess"];
        static bool IsDoor(TypeUse use, string[] doors) =>
            (use.ToNamespace == "System.IO" && doors.Contains(use.To, StringComparer.Ordinal)) || use.ToNamespace.StartsWith("System.Net.", StringComparison.Ordinal) || use.To == "Process";
        Assert.Empty(TypeUses.Of(Path(assembly)).Where(use => IsDoor(use, doors)).Select(use => $"{use.From} uses {use.To}"));

        // The service does open files: were that not seen, the above would mean nothing.
        Assert.Contains(TypeUses.Of(Path("ToolpathForge.Service")), use => IsDoor(use, doors));
    }
}
