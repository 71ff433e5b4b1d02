using System.Globalization;
using System.Text;

using QuarterCar.Scenarios;

using Spectre.Console;

namespace QuarterCar.Reports.Words;

/// <summary>Text for a terminal: 80 columns, readable without colour, colour only where the writer is a terminal and only at what matters.</summary>
internal sealed class TextPage
{
    private const int Width = 80;

    private static readonly int[] s_first = [0];

    private readonly IAnsiConsole _console;
    private readonly StringBuilder _page = new();
    private readonly TextWriter _writer;

    /// <summary>Onto a writer.</summary>
    /// <param name="writer">Where it goes.</param>
    /// <param name="colour">True where the writer is a terminal that shows colour.</param>
    public TextPage(TextWriter writer, bool colour)
    {
        _writer = writer;
        _console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Out = new AnsiConsoleOutput(new StringWriter(_page, CultureInfo.InvariantCulture)),
            Ansi = colour ? AnsiSupport.Yes : AnsiSupport.No,
            ColorSystem = colour ? ColorSystemSupport.Standard : ColorSystemSupport.NoColors,
            Interactive = InteractionSupport.No,
        });
        _console.Profile.Width = Width;
        _console.Profile.Capabilities.Unicode = true;
    }

    /// <summary>Writes the page out, without the spaces that fill a line.</summary>
    public void Flush()
    {
        foreach (string line in _page.ToString().TrimEnd().Split('\n')) _writer.WriteLine(line.TrimEnd());
        _writer.Flush();
    }

    /// <summary>A paragraph.</summary>
    public TextPage Paragraph(string text, string style = "")
    {
        string safe = Markup.Escape(text);
        _console.MarkupLine(style.Length == 0 ? safe : $"[{style}]{safe}[/]");
        return this;
    }

    /// <summary>An empty line.</summary>
    public TextPage Gap()
    {
        _console.WriteLine();
        return this;
    }

    /// <summary>A heading and its figures, aligned at the decimal point.</summary>
    public TextPage Group(FigureGroup group)
    {
        string[] numbers = Align.AtPoint([.. group.Lines.Select(l => l.Number)]);
        return Rows(group.Heading, [.. group.Lines.Select((l, i) => new[] { l.Words, numbers[i], l.Unit })], numbers: []);
    }

    /// <summary>A heading and a plain table below it.</summary>
    /// <param name="heading">The heading.</param>
    /// <param name="rows">Cells.</param>
    /// <param name="numbers">Columns to align at the decimal point.</param>
    /// <param name="heads">Column heads; none without.</param>
    /// <param name="gives">Columns of words that break where a line would be too long, the first if not said; of several the widest first. Numbers broken in two would read as others.</param>
    public TextPage Rows(string heading, IReadOnlyList<string[]> rows, int[] numbers, string[]? heads = null, int[]? gives = null)
    {
        if (rows.Count == 0) return this;
        Gap().Paragraph(heading, "bold");
        var table = new Table { Border = TableBorder.None, ShowHeaders = heads is not null };
        var aligned = rows.Select(r => (string[])r.Clone()).ToList();
        foreach (int column in numbers)
        {
            string[] texts = Align.AtPoint([.. rows.Select(r => r[column])]);
            for (int i = 0; i < texts.Length; i++) aligned[i][column] = texts[i];
        }

        for (int c = 0; c < rows[0].Length; c++)
            table.AddColumn(new TableColumn(new Text(heads?[c] ?? "")) { Padding = new Padding(c == 0 ? 2 : 0, 0, c == rows[0].Length - 1 ? 0 : 2, 0), NoWrap = !(gives ?? s_first).Contains(c) });
        foreach (string[] row in aligned) table.AddRow(row.Select(cell => new Text(cell)));
        _console.Write(table);
        return this;
    }

    /// <summary>Warnings, each with what to do; nothing where there are none.</summary>
    public TextPage Warnings(IReadOnlyList<Warning> warnings)
    {
        if (warnings.Count == 0) return this;
        Gap().Paragraph("Warnings", "bold");
        foreach (var warning in warnings)
        {
            var grid = new Grid().AddColumn(new GridColumn { Padding = new Padding(2, 0, 1, 0), NoWrap = true }).AddColumn(new GridColumn { Padding = new Padding(0, 0, 0, 0) });
            grid.AddRow(new Text("-"), new Text($"{warning.Message} ({warning.Code})"));
            _console.Write(grid);
        }

        return this;
    }
}
