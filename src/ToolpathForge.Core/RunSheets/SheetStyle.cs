namespace ToolpathForge.RunSheets;

/// <summary>How the page looks, on paper first: ink on white, hairlines, one column of text beside the facts, a title block at the foot.</summary>
internal static class SheetStyle
{
    internal const string Css = """
        :root { --ink: #2a2d31; --pencil: #6d7278; --line: #b9bdc2; --accent: #0b5894; --tint: #f4e7d1; }
        * { box-sizing: border-box; }
        body { margin: 0 auto; padding: 10mm; max-width: 210mm; color: var(--ink); background: #fff;
               font: 10.5pt/1.4 Charter, "Bitstream Charter", "Noto Serif", Georgia, serif; }
        h1 { font-size: 20pt; font-weight: 600; margin: 0 0 1mm; letter-spacing: .01em; }
        h2 { font-size: 14.5pt; font-weight: 600; margin: 0; }
        h3 { font-size: 10pt; font-weight: 600; margin: 5mm 0 1.5mm; text-transform: uppercase; letter-spacing: .08em; color: var(--pencil); break-after: avoid; }
        p { margin: 0 0 2mm; }
        .lead { color: var(--pencil); margin-bottom: 4mm; }
        section { margin-top: 9mm; padding-top: 4mm; border-top: .5mm solid var(--ink); }
        table { border-collapse: collapse; width: 100%; font-size: 9.5pt; font-variant-numeric: tabular-nums; }
        table + p { margin-top: 2mm; }
        th { text-align: left; font-weight: 600; border-bottom: .35mm solid var(--ink); padding: 1mm 3mm 1mm 0; vertical-align: bottom; }
        td { border-bottom: .18mm solid var(--line); padding: 1.1mm 3mm 1.1mm 0; vertical-align: top; }
        dl { display: grid; grid-template-columns: max-content 1fr; gap: .8mm 5mm; margin: 0; font-size: 9.5pt; font-variant-numeric: tabular-nums; }
        dt { color: var(--pencil); } dd { margin: 0; }
        ol, ul { margin: 0; padding-left: 6mm; } li { margin-bottom: 1mm; }
        .columns { display: grid; grid-template-columns: 1fr 1fr; gap: 7mm; }
        .pair { display: grid; grid-template-columns: 1fr 1fr; gap: 2mm; } .pair figure { break-inside: avoid; }
        figure { margin: 4mm 0 0; } figure svg { max-width: 100%; height: auto; display: block; margin: 0 auto; }
        figcaption { font-size: 9pt; color: var(--pencil); margin-top: 1.5mm; text-align: center; }
        .caution { border: .35mm solid var(--ink); padding: 3mm 4mm; margin-top: 4mm; box-decoration-break: clone; -webkit-box-decoration-break: clone; }
        .caution li { break-inside: avoid; } .caution table { margin-bottom: 2mm; }
        .caution h3 { margin-top: 0; color: var(--ink); }
        .finding { margin: 0 0 2.5mm; } .finding b { font-weight: 600; } .finding .advice { color: var(--pencil); }
        .proof { border-left: 1mm solid var(--accent); padding-left: 4mm; margin-top: 4mm; break-inside: avoid; }
        .hash { font: 8pt/1.3 ui-monospace, "DejaVu Sans Mono", monospace; overflow-wrap: anywhere; }
        .keep { break-inside: avoid; }
        footer { margin-top: 6mm; border: .35mm solid var(--ink); display: grid; grid-template-columns: 2fr 1fr 1fr; font-size: 9pt; }
        footer div { padding: 1.5mm 3mm; border-left: .18mm solid var(--line); } footer div:first-child { border-left: 0; }
        footer span { display: block; font-size: 7.5pt; color: var(--pencil); }
        @page { size: A4; margin: 12mm; }
        @media print { body { padding: 0; max-width: none; } section { break-before: page; border-top: 0; margin-top: 0; } figure, table, footer { break-inside: avoid; } .columns { grid-template-columns: 1fr 1fr; } }
        @media (max-width: 700px) { .columns { grid-template-columns: 1fr; } }
        """;
}
