namespace QuarterCar.Model.Terrain;

/// <summary>
/// One train of haversines seen from a crest: <c>y = top − height·sin²(πx/length)</c>, x the distance from the crest, m (physics.md section 2).
/// Bumps and dips take the same form, so that one table serves both.
/// </summary>
/// <param name="Crest">Distance of a crest, m.</param>
/// <param name="Top">Height of the crests, m.</param>
/// <param name="Height">Trough to crest, m, positive.</param>
/// <param name="Length">Crest to crest, m.</param>
public readonly record struct Wave(double Crest, double Top, double Height, double Length)
{
    /// <summary>Height above the crest (≤ 0), m, at <paramref name="x"/> from the crest.</summary>
    public double Below(double x)
    {
        var sine = Math.Sin(Math.PI * x / Length);
        return -Height * sine * sine;
    }

    /// <summary>Slope at <paramref name="x"/> from the crest.</summary>
    public double Slope(double x) => -Height * Math.PI / Length * Math.Sin(2 * Math.PI * x / Length);

    /// <summary>Second derivative at <paramref name="x"/> from the crest, 1/m; positive around a trough.</summary>
    public double Bend(double x) => -2 * Math.PI * Math.PI * Height / (Length * Length) * Math.Cos(2 * Math.PI * x / Length);

    /// <summary>Second derivative at a trough, 1/m: the largest curvature of the wave, since the slope is zero there.</summary>
    public double TroughBend => 2 * Math.PI * Math.PI * Height / (Length * Length);

    /// <summary>Distance <paramref name="s"/> seen from the nearest crest, m, so that far whoops keep their digits.</summary>
    public double Local(double s)
    {
        var x = s - Crest;
        return x - Length * Math.Round(x / Length);
    }

    /// <summary>Integral of <see cref="Below"/> from <paramref name="x1"/> to <paramref name="x2"/>, m².</summary>
    public double Integral(double x1, double x2) =>
        -Height / 2 * (x2 - x1 - Length / Math.PI * Math.Sin(Math.PI * (x2 - x1) / Length) * Math.Cos(Math.PI * (x1 + x2) / Length));
}
