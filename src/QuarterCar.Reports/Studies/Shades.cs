using SkiaSharp;

namespace QuarterCar.Reports.Studies;

/// <summary>One hue from pale to full in even steps of lightness, so that equal steps of a figure look equal and a grey print keeps the order. Interpolated in CIE L*a*b* (CIE 15:2004), D65.</summary>
internal static class Shades
{
    // L*, a*, b* of a pale blue-grey and of a deep blue of the setups' hue.
    private static readonly (double L, double A, double B) Pale = (96, -1.5, -3), Full = (32, -1, -38);

    /// <summary>The shade of a share: 0 pale, 1 full.</summary>
    public static SKColor At(double share)
    {
        double t = Math.Clamp(share, 0, 1);
        return Rgb(Mix(Pale.L, Full.L, t), Mix(Pale.A, Full.A, t), Mix(Pale.B, Full.B, t));
    }

    /// <summary>Black or white, whichever reads on a share's shade.</summary>
    public static SKColor InkOn(double share) => Mix(Pale.L, Full.L, Math.Clamp(share, 0, 1)) > 60 ? Plots.Palette.Ink : SKColors.White;

    private static double Mix(double a, double b, double t) => a + ((b - a) * t);

    private static SKColor Rgb(double l, double a, double b)
    {
        double fy = (l + 16) / 116, x = 0.95047 * Cube(fy + (a / 500)), y = Cube(fy), z = 1.08883 * Cube(fy - (b / 200));
        return new SKColor(
            Byte((3.2404542 * x) - (1.5371385 * y) - (0.4985314 * z)),
            Byte((-0.9692660 * x) + (1.8760108 * y) + (0.0415560 * z)),
            Byte((0.0556434 * x) - (0.2040259 * y) + (1.0572252 * z)));
    }

    private static double Cube(double f) => f > 6.0 / 29 ? f * f * f : 3 * (6.0 / 29) * (6.0 / 29) * (f - (4.0 / 29));

    // The transfer curve of sRGB (IEC 61966-2-1).
    private static byte Byte(double linear)
    {
        double v = Math.Clamp(linear, 0, 1);
        return (byte)Math.Round(255 * (v <= 0.0031308 ? 12.92 * v : (1.055 * Math.Pow(v, 1 / 2.4)) - 0.055));
    }
}
