using System.Collections.Immutable;

using QuarterCar.Studies;

using SkiaSharp;

namespace QuarterCar.Reports.Plots;

/// <summary>A stretch of the stroke, m of shaft showing.</summary>
/// <param name="Name">In words.</param>
/// <param name="High">Its end toward full droop.</param>
/// <param name="Low">Its end toward full bump.</param>
/// <param name="Shade">Grey, darker toward metal.</param>
internal sealed record Zone(string Name, double High, double Low, SKColor Shade)
{
    /// <summary>Colour of its name: grey is too faint on metal.</summary>
    public SKColor Ink => Name == "metal" ? Palette.Ink : Palette.Help;
}

/// <summary>A named place in the stroke, m of shaft showing.</summary>
/// <param name="Name">In words.</param>
/// <param name="Showing">m.</param>
internal sealed record Edge(string Name, double Showing);

/// <summary>The stroke divided into droop, primary, secondary, bump stop and metal: the same grey bands in every picture.</summary>
internal sealed class StrokeZones
{
    private static readonly SKColor Metal = SKColor.Parse("#A6A6A6");

    private StrokeZones(ImmutableArray<Zone> zones, ImmutableArray<Edge> edges) => (Zones, Edges) = (zones, edges);

    /// <summary>From full droop down; the metal beyond both ends is not among them.</summary>
    public ImmutableArray<Zone> Zones { get; }

    /// <summary>From full droop down.</summary>
    public ImmutableArray<Edge> Edges { get; }

    /// <summary>Beyond either end of the stroke.</summary>
    public static SKColor MetalShade => Metal;

    /// <summary>Of a standing corner.</summary>
    public static StrokeZones Of(StandingResult standing)
    {
        double stroke = standing.Scenario.Corner.Coilover.Stroke;
        var edges = new List<Edge> { new("full droop", stroke), new("ride height", standing.Figures.RideHeight), new("full bump", 0) };
        if (standing.Figures.CrossoverShaftShowing is { } crossover) edges.Add(new("crossover", crossover));
        if (standing.Springs.FirstOrDefault(s => s.Position == "tender")?.BindsAtShaftShowing is { } tender) edges.Add(new("tender closes", tender));
        double bump = BumpStop(standing) ?? double.NegativeInfinity, bind = CoilBind(standing) ?? 0;
        if (bump > 0) edges.Add(new("bump stop", bump));
        if (bind > 0) edges.Add(new("coil bind", bind));
        foreach (var spring in standing.Springs)
        {
            if (spring.BindsAtShaftShowing is { } at && Math.Abs(at - bind) > 1e-6 && spring.Position != "tender")
                edges.Add(new(spring.Position + " binds", at));
        }

        var inside = edges.Where(e => e.Showing >= 0 && e.Showing <= stroke).OrderByDescending(e => e.Showing).ToImmutableArray();
        return new(Divide(standing, stroke, bump, bind), inside);
    }

    /// <summary>Shaft showing where the bump stop touches, m; null without one.</summary>
    private static double? BumpStop(StandingResult standing)
    {
        if (standing.Scenario.Corner.Coilover.BumpStop is not { } stop) return null;
        if (!stop.OnAxle) return stop.Length;
        int pressed = IndexOf(standing.Curve, r => r.BumpStopForce > 0);
        return pressed > 0 ? standing.Curve[pressed - 1].ShaftShowing : null;
    }

    /// <summary>Shaft showing where nothing is left to compress, m; null where that does not come. The row after a break has the break's rate toward bump.</summary>
    private static double? CoilBind(StandingResult standing)
    {
        const double solid = 0.99 * 5e6; // N/m, physics.md section 3
        int bound = IndexOf(standing.Curve, r => r.SpringRate >= solid);
        return bound > 0 ? standing.Curve[bound - 1].ShaftShowing : null;
    }

    private static int IndexOf<T>(ImmutableArray<T> rows, Func<T, bool> holds)
    {
        for (int i = 0; i < rows.Length; i++)
        {
            if (holds(rows[i])) return i;
        }

        return -1;
    }

    private static ImmutableArray<Zone> Divide(StandingResult standing, double stroke, double bump, double bind)
    {
        var figures = standing.Figures;
        double crossover = figures.CrossoverShaftShowing ?? double.NegativeInfinity;
        double[] cuts = [.. new[] { stroke, figures.RideHeight, crossover, bump, bind, 0 }.Where(c => c >= 0 && c <= stroke).Distinct().OrderDescending()];
        var zones = ImmutableArray.CreateBuilder<Zone>();
        for (int i = 1; i < cuts.Length; i++)
        {
            double middle = (cuts[i - 1] + cuts[i]) / 2;
            var (name, shade) = middle < bind ? ("metal", "#A6A6A6")
                : middle < bump ? ("bump stop", "#D2D2D2")
                : middle < crossover && middle < figures.RideHeight ? ("secondary", "#E4E4E4")
                : middle < figures.RideHeight ? (figures.CrossoverShaftShowing is null ? "bump travel" : "primary", "#F1F1F1")
                : ("droop", "#FAFAFA");
            if (zones.Count > 0 && zones[^1].Name == name) zones[^1] = zones[^1] with { Low = cuts[i] };
            else zones.Add(new(name, cuts[i - 1], cuts[i], SKColor.Parse(shade)));
        }

        return zones.ToImmutable();
    }
}
