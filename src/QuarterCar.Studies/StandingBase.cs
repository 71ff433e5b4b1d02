using QuarterCar.Model;
using QuarterCar.Scenarios.Reading;

namespace QuarterCar.Studies;

/// <summary>How the scenario as written stands, asked of the same corner that runs: what a reading keeps when a load case or an override changes something.</summary>
public sealed class StandingBase : IStandingBase
{
    /// <summary>The one that everybody can share: it remembers nothing.</summary>
    public static readonly StandingBase Instance = new();

    /// <inheritdoc/>
    public double? HeldTravel(CornerData asWritten) => Ask(asWritten, c => c.Stack.HeldTravel);

    /// <inheritdoc/>
    public double? SprungWeight(CornerData asWritten) => Ask(asWritten, c => c.SprungWeight);

    private static double? Ask(CornerData asWritten, Func<Corner, double?> question)
    {
        try
        {
            return question(Corner.Build(asWritten));
        }
        catch (CornerException)
        {
            return null; // the reader notes the place where an answer was wanted
        }
    }
}
