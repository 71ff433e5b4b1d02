using QuarterCar.Numerics.Integration;

namespace QuarterCar.Numerics.Tests.Integration;

/// <summary>A rooted tree of Butcher's theory: stands for one elementary differential of the solution.</summary>
/// <param name="Branches">Trees that hang on the root, in rising index of <see cref="OfOrder"/>.</param>
internal sealed record Tree(IReadOnlyList<Tree> Branches)
{
    private static readonly Dictionary<int, IReadOnlyList<Tree>> s_known = [];

    /// <summary>Number of nodes.</summary>
    public int Order { get; } = 1 + Branches.Sum(b => b.Order);

    /// <summary>γ: the order times the densities of the branches.</summary>
    public double Density => Order * Branches.Aggregate(1.0, (product, b) => product * b.Density);

    /// <summary>All trees with a number of nodes.</summary>
    public static IReadOnlyList<Tree> OfOrder(int order)
    {
        lock (s_known)
        {
            if (!s_known.TryGetValue(order, out IReadOnlyList<Tree>? trees))
            {
                Tree[] smaller = [.. Enumerable.Range(1, order - 1).SelectMany(OfOrder)];
                s_known[order] = trees = [.. Forests(smaller, 0, order - 1).Select(branches => new Tree(branches))];
            }

            return trees;
        }
    }

    /// <summary>All trees up to a number of nodes.</summary>
    public static IEnumerable<Tree> UpTo(int order) => Enumerable.Range(1, order).SelectMany(OfOrder);

    /// <summary>Σ weight_i·Φ_i over the stages of the tableau.</summary>
    public double Weigh(ReadOnlySpan<double> weights)
    {
        double sum = 0;
        double[] stages = Stages();
        for (int i = 0; i < weights.Length; i++)
            sum += weights[i] * stages[i];
        return sum;
    }

    public override string ToString() => "[" + string.Concat(Branches) + "]";

    // Φ_i = Π over branches of Σ_j a_ij·Φ_j(branch).
    private double[] Stages()
    {
        double[] product = new double[DormandPrince853.AllStages];
        Array.Fill(product, 1);
        foreach (double[] inner in Branches.Select(b => b.Stages()))
        {
            for (int i = 0; i < product.Length; i++)
                product[i] *= DormandPrince853.A[i].Select((a, j) => a * inner[j]).Sum();
        }

        return product;
    }

    private static IEnumerable<Tree[]> Forests(Tree[] trees, int from, int nodes)
    {
        if (nodes == 0)
            yield return [];
        for (int i = from; i < trees.Length && nodes > 0; i++)
        {
            if (trees[i].Order > nodes)
                continue;
            foreach (Tree[] rest in Forests(trees, i, nodes - trees[i].Order))
                yield return [trees[i], .. rest];
        }
    }
}
