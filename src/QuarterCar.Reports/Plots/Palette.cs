using System.Collections.Immutable;

using SkiaSharp;

namespace QuarterCar.Reports.Plots;

/// <summary>The colours of every picture: ink for data, grey for help, colour for setups and contacts alone.</summary>
internal static class Palette
{
    /// <summary>Text and standing curves.</summary>
    public static readonly SKColor Ink = SKColor.Parse("#222222");

    /// <summary>Lesser text and help lines; at least 4.5 to 1 on every zone but metal.</summary>
    public static readonly SKColor Help = SKColor.Parse("#4A4A4A");

    /// <summary>Grid lines.</summary>
    public static readonly SKColor Grid = SKColor.Parse("#DDDDDD");

    /// <summary>The single setup: blue of Okabe and Ito, Color Universal Design, 2008.</summary>
    public static readonly SKColor Setup = SKColor.Parse("#0072B2");

    /// <summary>Setups beside each other, in order: Okabe and Ito's palette.</summary>
    public static readonly ImmutableArray<SKColor> Setups =
    [
        SKColor.Parse("#0072B2"), SKColor.Parse("#D55E00"), SKColor.Parse("#009E73"), SKColor.Parse("#CC79A7"), SKColor.Parse("#E69F00"), SKColor.Parse("#56B4E9"),
    ];

    /// <summary>Contacts: vermilion of the same palette.</summary>
    public static readonly SKColor Contact = SKColor.Parse("#D55E00");

    /// <summary>Air below the tyre.</summary>
    public static readonly SKColor Air = SKColor.Parse("#ECECEC");

    /// <summary>For the plotting library.</summary>
    public static ScottPlot.Color ToPlot(this SKColor color, double opacity = 1) =>
        new ScottPlot.Color(color.Red, color.Green, color.Blue).WithAlpha(opacity);
}
