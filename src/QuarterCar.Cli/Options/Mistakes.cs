namespace QuarterCar.Cli.Options;

/// <summary>Joins a mistake in one option with those that reading the rest finds, so that all are told at once.</summary>
internal static class Mistakes
{
    /// <summary>What a reading gives; throws with the mistake before its own where there is one.</summary>
    /// <param name="mistake">Empty for none.</param>
    /// <param name="reading">The rest.</param>
    /// <exception cref="BadInputException">With every mistake.</exception>
    public static T With<T>(string mistake, Func<T> reading)
    {
        if (mistake.Length == 0) return reading();
        try
        {
            reading();
        }
        catch (BadInputException e)
        {
            throw new BadInputException([mistake, .. e.Lines]);
        }

        throw new BadInputException(mistake);
    }
}
