using System.Collections.Immutable;

namespace QuarterCar.Model.Selection;

/// <summary>Finds the pairs of corners whose names differ by left and right alone.</summary>
public static class WeighSides
{
    /// <summary>One difference a pair, in the order of the left corners.</summary>
    public static IEnumerable<SideDifference> Of(ImmutableArray<WeighedCorner> corners)
    {
        foreach (WeighedCorner left in corners)
        {
            if (Mirrored(left.Measured.Name) is { } wanted && corners.FirstOrDefault(c => Same(c.Measured.Name, wanted)) is { } right)
                yield return new SideDifference(left, right);
        }
    }

    /// <summary>A left corner's name with right for left; null for every other.</summary>
    private static string? Mirrored(string? name) =>
        name is not null && name.Contains("left", StringComparison.OrdinalIgnoreCase) ? name.Replace("left", "right", StringComparison.OrdinalIgnoreCase) : null;

    private static bool Same(string? name, string wanted) => string.Equals(name, wanted, StringComparison.OrdinalIgnoreCase);
}
