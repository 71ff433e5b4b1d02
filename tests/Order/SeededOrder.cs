using Xunit.Abstractions;
using Xunit.Sdk;

namespace QuarterCar.Tests.Order;

/// <summary>
/// Shuffles the test classes of a project, and the tests of a class, by the number in QUARTERCAR_ORDER, so that a test that
/// leans on an earlier one is found and the order that shows it can be had again. Without the variable the order is the runner's.
/// </summary>
public sealed class SeededOrder : Xunit.ITestCollectionOrderer, ITestCaseOrderer
{
    private static readonly int? s_seed = int.TryParse(Environment.GetEnvironmentVariable("QUARTERCAR_ORDER"), out int seed) ? seed : null;

    /// <inheritdoc/>
    public IEnumerable<ITestCollection> OrderTestCollections(IEnumerable<ITestCollection> testCollections) =>
        Shuffled(testCollections, c => c.DisplayName);

    /// <inheritdoc/>
    public IEnumerable<TTestCase> OrderTestCases<TTestCase>(IEnumerable<TTestCase> testCases)
        where TTestCase : ITestCase => Shuffled(testCases, c => c.UniqueID);

    // Sorted first, because the runner's own order is not the same everywhere.
    private static IEnumerable<T> Shuffled<T>(IEnumerable<T> items, Func<T, string> name)
    {
        if (s_seed is not { } seed)
            return items;
        T[] sorted = [.. items.OrderBy(name, StringComparer.Ordinal)];
        new Random(seed).Shuffle(sorted);
        return sorted;
    }
}
