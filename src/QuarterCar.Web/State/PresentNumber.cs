using QuarterCar.Scenarios.Documents;
using QuarterCar.Scenarios.Keys;
using QuarterCar.Scenarios.Quantities;
using QuarterCar.Scenarios.Reading;

namespace QuarterCar.Web.State;

/// <summary>The single number that a path stands for now: as written, or its default.</summary>
internal static class PresentNumber
{
    /// <summary>The number and what may stand there; null where no single number does.</summary>
    /// <param name="known">The path.</param>
    /// <param name="node">What the document has there; null for nothing.</param>
    public static (Measured Present, QuantityKind Kind)? Of(KnownPath known, DocumentNode? node) =>
        SideBlocks.KindOfNumber(known.Kind, node) is { } kind && ((node as ScalarNode)?.Text ?? (node is null ? known.Default : null)) is { } text
            && Measured.TryParse(text, out Measured present) && double.IsFinite(present.Si) ? (present, kind) : null;
}
