using ToolpathForge.Service;

namespace ToolpathForge.Cli;

/// <summary>The help texts.</summary>
internal static class Help
{
    internal const string Overview =
        """
        ToolpathForge turns a job file into proven G-code for shaped board ends and their patterns.

          toolpathforge new porch.toml               write a starter job, with comments, to fill in
          toolpathforge check porch.toml             say what would go wrong; write nothing
          toolpathforge check --bit … --depth …      say whether bit, depth and speed go together; no job needed
          toolpathforge cut porch.toml --out out     write programs, run sheet, drawings and proof
          toolpathforge draw porch.toml --out dir    draw everything at full size, to print and to mark out by hand
          toolpathforge trace bracket.dxf            say what a drawing holds, and what a bit cannot reach
          toolpathforge prove FILE --job porch.toml  read a program back and measure it against the job
          toolpathforge trial porch.toml             write a trial piece that shows bit and axes as they are
          toolpathforge list bits                    show what a job may name: lumber, panels, bits,
                                                     materials, machines, dialects, shapes
          toolpathforge host                         serve a plugin in a CAD: JSON-RPC on the standard streams

        toolpathforge COMMAND --help says more about one of them; toolpathforge --version says which this is.

        It ends with 0 when all is well, 1 when a problem in the job stops it, 2 when the job file or the command
        cannot be used, 3 when a program failed its proof, and 130 when interrupted.

        """;

    private const string Check =
        """
        toolpathforge check JOB [--json] [--timings]
        toolpathforge check --bit ID --depth LENGTH --material ID [more settings] [--unit in|mm] [--json]
        toolpathforge check --hand --bit ID --board LENGTH [more settings] [--unit in|mm] [--json]

        With a JOB: reads it, works out every cut and its program, proves each program, and says what would go wrong.
        Without one: holds the settings of a machine, or of a hand router with a pattern, against their limits, a row each.
        Nothing is written.

          --json               print the result as JSON, in mm, for other programs
          --timings            say how long each stage of a job took

        Settings of a machine, as check --bit upcut-1/4 --depth 38mm --material fir:


        """;

    private const string CheckHand =
        """

        Settings of a hand router, as check --hand --bit top-bearing-1/2-long --pattern 6mm --board 25.4mm:

          --hand               look at a hand router that follows a pattern

        """;

    private const string CheckEnd =
        """

        With either:

          --job JOB            take machine, unit and own catalogue files from a job
          --unit in|mm         the unit of bare numbers and of the answer; that of the job, or in (inches)

        """;

    internal static string Of(string? command) => command switch
    {
        "new" =>
            """
            toolpathforge new FILE [--unit in|mm]

            Writes a starter job to FILE: a pattern and a board end, every line explained. Change the sizes to yours,
            then run check on it. A file that is there already is left alone.

              --unit in|mm   the unit the job is written in; in (inches) unless you say otherwise

            """,
        "check" => Check + SettingsArguments.HelpOf(CheckSettings.MachineOptions) + CheckHand + SettingsArguments.HelpOf(CheckSettings.HandOptions) + CheckEnd,
        "cut" =>
            """
            toolpathforge cut JOB [--out FOLDER] [--replace] [--json] [--timings]

            Does what check does; then, if nothing stops it and every program passed its proof, writes the programs,
            the run sheet, the drawings and the proof to FOLDER. Print the run sheet and take it to the machine.

            FOLDER is replaced as a whole, or not at all. It may be new, empty, or one that cut wrote before for this
            job; a file in it that is yours, or that you changed, stops the command before anything is touched.

              --out FOLDER   where to write; "out" in the folder you are in, unless you say otherwise
              --replace      also replace what was made of another job, or by another command
              --json         print the result as JSON, in mm, for other programs
              --timings      say how long each stage took

            """,
        "draw" =>
            """
            toolpathforge draw JOB [--out FOLDER] [--family] [--step LENGTH] [--replace] [--json] [--timings]

            Draws every pattern and board end of the job at full size: SVG and DXF in mm, and PDF for A4 and Letter, spread
            over as many sheets as it takes, with register marks and bars to measure. A sheet tells how to mark out by hand:
            ordinates, ellipse stick, beam compass, saw line. It asks neither bit nor machine.

            FOLDER is replaced as a whole, or not at all, as with cut.

              --out FOLDER   where to write; "drawings" in the folder you are in, unless you say otherwise
              --family       also show the boards of each family side by side at one scale; all boards of a job without one
              --step LENGTH  what the ordinates stand apart; a usual step, unless you say otherwise
              --replace      also replace what was made of another job, or by another command
              --json         print the result as JSON, in mm, for other programs
              --timings      say how long each stage took

            """,
        "trace" =>
            """
            toolpathforge trace DRAWING [--layer NAME] [--unit UNIT] [--gap LENGTH] [--bit DIAMETER]
                                        [--offset DISTANCE --dxf FILE] [--json] [--timings]

            Reads DRAWING, DXF as text or binary or SVG, and shows its outlines with their holes: areas, sizes, the
            tightest inside radius, the narrowest slot, and everything that had to be put right. Bare lengths are in inches
            for a drawing in inches or feet, else in mm.

              --layer NAME       look at this layer only; for SVG, at the group with this id or class
              --unit UNIT        the unit that it is drawn in: mm, cm, dm, m, in, ft or yd; what it says itself, unless given
              --gap LENGTH       join ends that are no farther apart, up to 10 mm; 0.01 mm unless given
              --bit DIAMETER     say what a bit of this diameter cannot reach, running outside the outlines and in the holes
              --offset DISTANCE  make the parallel of all outlines at this distance; below 0 it lies inside the material
              --dxf FILE         where the parallel is written to, in mm; a file that is there already is left alone
              --json             print the result as JSON, in mm, for other programs
              --timings          say how long each stage took

            """,
        "prove" =>
            """
            toolpathforge prove FILE --job JOB [--make ID] [--json] [--timings]

            Reads the program FILE line by line, works out where the bit goes, and measures that against the pieces of
            the job: how deep it cuts into them, how much it leaves standing, whether it keeps its floor, its feeds and
            the machine's travel. FILE may have been changed by hand, or come from elsewhere.

              --job JOB      the job that the program is meant for
              --make ID      what it is meant to cut, when the name of FILE does not say
              --json         print the result as JSON, in mm, for other programs
              --timings      say how long each stage took

            """,
        "host" =>
            """
            toolpathforge host

            For other programs, not for people: answers requests in JSON-RPC 2.0 on its standard input with replies on its
            standard output, a message a line or each after its Content-Length. It ends when its input does, when it is asked
            to, or when the process that it was told of has ended. src/ToolpathForge.Plugin/README.md tells what may be asked.

            """,
        "trial" =>
            """
            toolpathforge trial JOB [--make ID] [--out FOLDER] [--replace] [--timings]

            Writes the program of a trial piece, a square with a slot and a hole, for the machine, stock and bit of a make
            of the job, proven like any other; and a page that says what to measure with a caliper. Written into the job,
            the readings give the bit's true diameter, the scale of either axis and how far they are from square, and
            every program makes up for them.

            FOLDER is replaced as a whole, or not at all, as with cut.

              --make ID      the make whose bit and stock are used; the first, unless you say otherwise
              --out FOLDER   where to write; "trial" in the folder you are in, unless you say otherwise
              --replace      also replace what was made of another job, or by another command
              --timings      say how long each stage took

            """,
        "list" =>
            """
            toolpathforge list lumber|panels|bits|materials|machines|dialects|shapes|figures [filters] [--job JOB]
                              [--unit in|mm] [--json]

            Shows what a job may name, and where each row comes from. A row "from memory" wants checking against your own
            bit, board or machine. Figures are those of the program itself, with what each rests on.
            Filters: list bits --kind down-cut --diameter 1/4

              --kind WORD         bits or materials of this kind
              --diameter LENGTH   bits of this cutting diameter
              --thickness LENGTH  lumber of this thickness; panels sold as this, or that may measure this
              --width LENGTH      lumber of this width
              --job JOB      also show what the files add that this job names
              --unit in|mm   the unit to show; that of the job, or in (inches), unless you say otherwise
              --json         print the rows as JSON, in mm, for other programs

            """,
        _ => Overview,
    };
}
