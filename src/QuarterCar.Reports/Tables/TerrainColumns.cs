using System.Collections.Immutable;

using QuarterCar.Reports.Units;
using QuarterCar.Studies.Terrains;

namespace QuarterCar.Reports.Tables;

/// <summary>The columns of terrain.csv.</summary>
public static class TerrainColumns
{
    private static readonly ImmutableArray<Column<TerrainRow>> s_ground =
    [
        new("distance", Dimension.Distance, r => r.Distance),
        new("ground", Dimension.Length, r => r.Ground),
    ];

    /// <summary>Distance and ground, and the road where a tyre is known.</summary>
    public static Table<TerrainRow> Of(TerrainResult result) =>
        new(result.Road is null ? s_ground : [.. s_ground, new("road", Dimension.Length, r => r.Road)]);
}
