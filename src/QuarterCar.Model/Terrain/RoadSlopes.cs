using System.Collections.Immutable;

namespace QuarterCar.Model.Terrain;

/// <summary>Looks a finished road over for slopes that deserve a word.</summary>
internal static class RoadSlopes
{
    private const double SteepRise = 1; // physics.md section 2: past this the speed could not be held

    // Slopes of tables are looked at this often a segment before a maximum or a passage is searched for by halving.
    private const int Looks = 4096;

    private const int Halvings = 60;

    private const double HeightRounding = 1e-12; // m: a footprint's front end exactly on the first corner is not on the course

    public static RoadFindings Look(Road road, ImmutableArray<HubStop> hubStops)
    {
        var (steepest, deepest) = (0.0, 0.0);
        double? steepFrom = null;
        foreach (ref readonly var segment in road.Segments)
        {
            var (high, low) = Extremes(segment);
            (steepest, deepest) = (Math.Max(steepest, high), Math.Min(deepest, low));
            if (steepFrom is null && high > SteepRise)
                steepFrom = FirstSteep(segment);
        }
        var jumps = false;
        for (var i = 0; i < road.Breaks.Length; i++)
            jumps |= road.Jumps(i);
        road.Evaluate(0, out var start, out _);
        var underStart = Math.Abs(start) < HeightRounding ? 0 : start;
        return new RoadFindings(hubStops, jumps ? null : Math.Max(steepest, -deepest), steepest, steepFrom, underStart);
    }

    private static (double High, double Low) Extremes(in RoadSegment segment)
    {
        // Only level ground reaches to infinity.
        if (double.IsInfinity(segment.Start) || double.IsInfinity(segment.End))
            return (0, 0);
        var (first, last) = (Slope(segment, segment.Start), Slope(segment, segment.End));
        var (high, low) = (Math.Max(first, last), Math.Min(first, last));
        if (segment.Form != RoadForm.Table)
            return (high, low); // the slope of a polynomial of degree two and of an arc is monotone
        var width = (segment.End - segment.Start) / Looks;
        for (var i = 1; i < Looks; i++)
        {
            var slope = Slope(segment, segment.Start + i * width);
            (high, low) = (Math.Max(high, slope), Math.Min(low, slope));
        }
        return (high, low);
    }

    private static double FirstSteep(in RoadSegment segment)
    {
        if (Slope(segment, segment.Start) > SteepRise)
            return segment.Start;
        var looks = segment.Form == RoadForm.Table ? Looks : 1;
        var width = (segment.End - segment.Start) / looks;
        var i = 1;
        while (i < looks && Slope(segment, segment.Start + i * width) <= SteepRise)
            i++;
        var (gentle, steep) = (segment.Start + (i - 1) * width, i < looks ? segment.Start + i * width : segment.End);
        for (var halving = 0; halving < Halvings; halving++)
        {
            var middle = (gentle + steep) / 2;
            (gentle, steep) = Slope(segment, middle) > SteepRise ? (gentle, middle) : (middle, steep);
        }
        return steep;
    }

    private static double Slope(in RoadSegment segment, double s)
    {
        segment.Evaluate(s, out _, out var slope);
        return slope;
    }
}
