using QuarterCar.Model.Terrain;

namespace QuarterCar.Scenarios.Reading;

/// <summary>How many rows of trace a scenario asks for, and where that is too many.</summary>
public static class TraceRows
{
    /// <summary>Rows allowed.</summary>
    public const long Most = 10_000_000;

    /// <summary>s of run after the terrain's end where no duration is given.</summary>
    public const double AfterTerrain = 3;

    /// <summary>s of a drop test where no duration is given.</summary>
    public const double DropTest = 6;

    /// <summary>The duration of a run, s, the default worked out.</summary>
    public static double Duration(RunSettings run, Excitation excitation) => run.Duration ?? excitation switch
    {
        Course course => (course.Pieces.Sum(Length) / course.Speed) + AfterTerrain,
        _ => DropTest,
    };

    /// <summary>Rows at k·sample ≤ duration.</summary>
    public static double Count(RunSettings run, Excitation excitation) => Math.Floor(Duration(run, excitation) / run.Sample) + 1;

    /// <summary>Length of a piece along the level, m.</summary>
    public static double Length(TerrainPiece piece) => piece switch
    {
        FlatPiece p => p.Length,
        RampPiece p => p.Length,
        HaversinePiece p => p.Spacing * p.Count,
        RandomPiece p => p.Length,
        ProfilePiece p => p.Points[^1].At - p.Points[0].At,
        _ => 0,
    };

    /// <summary>Notes too many rows at the key that asks for them.</summary>
    public static void Check(ReadValues values, Excitation excitation, ProblemList problems)
    {
        var rows = Count(DataMaker.Run(values), excitation);
        if (rows > Most)
        {
            var node = values.Node("run.sample") ?? values.Node("run.duration");
            problems.Note(node!.Place, "run.sample", Texts.TooManyRows(rows), Texts.FewerRows(Most));
        }
    }
}
