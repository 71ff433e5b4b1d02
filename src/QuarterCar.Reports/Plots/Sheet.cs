using System.Globalization;

using SkiaSharp;

namespace QuarterCar.Reports.Plots;

/// <summary>One picture: a title that states the answer, a line of help below it, panels, and text over them. 800 px wide in its own measure.</summary>
internal sealed class Sheet
{
    /// <summary>Width, px.</summary>
    public const int Width = 800;

    private const float Margin = 16;

    private static readonly SKPngEncoderOptions Quick = new(SKPngEncoderFilterFlags.Up, 2);

    private readonly List<string> _title, _note;
    private readonly List<Action<SKCanvas>> _under = [], _over = [];
    private readonly List<Panel> _panels = [];

    /// <summary>A picture's heading.</summary>
    /// <param name="name">File name without ending.</param>
    /// <param name="title">The answer.</param>
    /// <param name="note">What helps to read it.</param>
    public Sheet(string name, string title, string note)
    {
        (Name, Title, Note) = (name, title, note);
        _title = Text.Wrap(title, Width - (2 * Margin));
        _note = note.Length == 0 ? [] : Text.WrapSmall(note, Width - (2 * Margin));
        Top = 12 + (_title.Count * (Plots.Text.Title + 5)) + (_note.Count * (Plots.Text.Small + 4)) + 8;
    }

    /// <summary>File name without ending.</summary>
    public string Name { get; }

    /// <summary>The answer in words.</summary>
    public string Title { get; }

    /// <summary>What helps to read it.</summary>
    public string Note { get; }

    /// <summary>One sentence for below the picture: what to look for.</summary>
    public required string Caption { get; init; }

    /// <summary>Where the panels may begin, px.</summary>
    public float Top { get; }

    /// <summary>Height, px; set by the picture once it knows.</summary>
    public float Height { get; set; } = 450;

    /// <summary>Adds a coordinate system.</summary>
    public Panel Add(Panel panel)
    {
        _panels.Add(panel);
        return panel;
    }

    /// <summary>Drawn below axes and lines.</summary>
    public void Under(Action<SKCanvas> draw) => _under.Add(draw);

    /// <summary>Drawn over axes and lines.</summary>
    public void Over(Action<SKCanvas> draw) => _over.Add(draw);

    /// <summary>As PNG, two pixels a px, so that it is sharp in print.</summary>
    public byte[] Png(float scale = 2)
    {
        using var surface = SKSurface.Create(new SKImageInfo((int)(Width * scale), (int)(Height * scale), SKColorType.Rgba8888, SKAlphaType.Opaque));
        surface.Canvas.Scale(scale);
        Draw(surface.Canvas);
        using var pixels = surface.PeekPixels() ?? throw new InvalidOperationException("a raster picture has pixels");
        using var png = pixels.Encode(Quick) ?? throw new InvalidOperationException("the picture could not be encoded");
        return png.ToArray();
    }

    /// <summary>As SVG with real text.</summary>
    public string Svg()
    {
        using var stream = new MemoryStream();
        using (var canvas = SKSvgCanvas.Create(SKRect.Create(Width, Height), stream)) Draw(canvas);
        return SvgText.Mend(System.Text.Encoding.UTF8.GetString(stream.ToArray()), Name, Title, Height.ToString(CultureInfo.InvariantCulture));
    }

    private void Draw(SKCanvas canvas)
    {
        using var white = new SKPaint { Color = SKColors.White };
        canvas.DrawRect(0, 0, Width, Height, white);
        foreach (var draw in _under) draw(canvas);
        foreach (var panel in _panels) panel.Draw(canvas);
        float y = Plots.Text.DrawTitle(canvas, _title, Margin, 10) + 2;
        foreach (string line in _note)
        {
            Plots.Text.Draw(canvas, line, SKRect.Create(Margin, y, Width, Plots.Text.Small + 4), Palette.Help);
            y += Plots.Text.Small + 4;
        }

        foreach (var draw in _over) draw(canvas);
    }
}
