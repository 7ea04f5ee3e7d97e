using System.Globalization;
using System.Text;

namespace ToolpathForge.Plugin;

/// <summary>A job for what is selected: its outlines cut from a panel. Its ids are those of the core's catalogues.</summary>
public sealed class SelectionJob
{
    /// <summary>The name by which a job's <c>drawing</c> names the selection: <c>@selection</c>.</summary>
    public const string OutlineName = "selection";

    /// <summary>What the person calls it.</summary>
    public string Name { get; set; } = "Selection";

    /// <summary>Id of the machine.</summary>
    public string Machine { get; set; } = "desktop-400";

    /// <summary>Id of the dialect.</summary>
    public string Dialect { get; set; } = "metric-centre";

    /// <summary>Id of the panel.</summary>
    public string Panel { get; set; } = "hardboard-1/4";

    /// <summary>Measured thickness of the panel with its unit, as a person writes it.</summary>
    public string Thickness { get; set; } = "5.6 mm";

    /// <summary>Id of the bit.</summary>
    public string Bit { get; set; } = "downcut-1/4";

    /// <summary>How far the piece may be from the drawing, with its unit.</summary>
    public string Tolerance { get; set; } = "0.1 mm";

    /// <summary>Asks the person for each, proposing what is set; false as soon as one is not answered.</summary>
    /// <param name="host">Who asks. Call this on the host's own thread.</param>
    public bool AskFor(ICadHost host)
    {
        string? Next(string question, string proposal) => host.Ask(question, proposal)?.Trim();
        if (Next("Name of the job", Name) is not { } name
            || Next("Machine (id)", Machine) is not { } machine
            || Next("Dialect of the machine's programs (id)", Dialect) is not { } dialect
            || Next("Panel (id)", Panel) is not { } panel
            || Next("Measured thickness of the panel", Thickness) is not { } thickness
            || Next("Bit (id)", Bit) is not { } bit)
        {
            return false;
        }

        (Name, Machine, Dialect, Panel, Thickness, Bit) = (name, machine, dialect, panel, thickness, bit);
        return true;
    }

    /// <summary>The text of the job.</summary>
    public string Text() =>
        "format = 1\n"
        + "name = " + Quoted(Name) + "\n"
        + "unit = \"mm\"\n"
        + "tolerance = " + Quoted(Tolerance) + "\n"
        + "machine = " + Quoted(Machine) + "\n"
        + "dialect = " + Quoted(Dialect) + "\n\n"
        + "[[make]]\n"
        + "id = \"" + OutlineName + "\"\n"
        + "kind = \"outline\"\n"
        + "drawing = \"@" + OutlineName + "\"\n"
        + "stock = { panel = " + Quoted(Panel) + ", thickness = " + Quoted(Thickness) + " }\n"
        + "bit = " + Quoted(Bit) + "\n";

    // A basic string of TOML 1.0: quotes, backslashes and control characters escaped.
    private static string Quoted(string text)
    {
        var quoted = new StringBuilder("\"");
        foreach (char c in text)
        {
            if (c is '"' or '\\')
            {
                quoted.Append('\\').Append(c);
            }
            else if (c is < ' ' or '\x7f')
            {
                quoted.Append("\\u").Append(((int)c).ToString("X4", CultureInfo.InvariantCulture));
            }
            else
            {
                quoted.Append(c);
            }
        }

        return quoted.Append('"').ToString();
    }
}
