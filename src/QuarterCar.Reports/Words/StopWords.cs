using QuarterCar.Model;
using QuarterCar.Studies;

namespace QuarterCar.Reports.Words;

/// <summary>What is to be said of a contact's peak force.</summary>
internal static class StopWords
{
    /// <summary>True where the stiffness it hangs on is assumed: of bound coils always, of metal and the top-out where the scenario gives none.</summary>
    public static bool IsAssumed(EventRow contact, CoiloverData stops) => contact.Event switch
    {
        "coil_bind" => true,
        "bottom_out" => stops.BottomOut == StopData.DefaultBottomOut,
        "top_out" => stops.TopOut == StopData.DefaultTopOut,
        _ => false,
    };

    /// <summary>Stands below a table of contacts; null where no force in it is assumed.</summary>
    public static string? Below(IEnumerable<EventRow> contacts, CoiloverData stops)
    {
        string[] assumed = [.. contacts.Where(c => IsAssumed(c, stops)).Select(c => $"“{EventWords.Of(c.Event)}”").Distinct()];
        return assumed.Length == 0 ? null
            : $"The force of {string.Join(" and ", assumed)} is {Cautions.Assumed}: the stiffness behind it is assumed, not measured. It ranks setups and sizes no part.";
    }
}
