using System.Collections.Immutable;
using System.Text;

using QuarterCar.Reports.Plots;

namespace QuarterCar.Reports.Files;

/// <summary>Writes pictures as PNG and SVG.</summary>
internal static class PlotFiles
{
    /// <summary>Writes both files of each picture; gives SVG and caption for a page.</summary>
    public static ImmutableArray<(string Svg, string Caption)> Write(ImmutableArray<Sheet> sheets, ResultFolder files, CancellationToken cancel)
    {
        var drawn = new (byte[] Png, string Svg)[sheets.Length];
        for (int i = 0; i < sheets.Length; i++)
        {
            cancel.ThrowIfCancellationRequested();
            drawn[i] = (sheets[i].Png(), sheets[i].Svg());
        }

        for (int i = 0; i < sheets.Length; i++)
        {
            var (png, svg) = drawn[i];
            files.Write(sheets[i].Name + ".png", s => s.Write(png));
            files.Write(sheets[i].Name + ".svg", s => s.Write(Encoding.UTF8.GetBytes(svg)));
        }

        return [.. sheets.Select((sheet, i) => (drawn[i].Svg, sheet.Caption))];
    }
}
