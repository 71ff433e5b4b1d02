namespace QuarterCar.Reports.Words;

/// <summary>Words of the trade for events, and which of them deserve a label first.</summary>
public static class EventWords
{
    /// <summary>Contacts that take a hit, hardest first: the rows of the contacts table.</summary>
    public static bool IsContact(string name) => name is "bump_stop" or "bottom_out" or "coil_bind" or "top_out";

    /// <summary>Metal or bound coils: nothing to drive with.</summary>
    public static bool IsMetal(string name) => name is "bottom_out" or "coil_bind";

    /// <summary>True for the second half of a pair: releases carry no label of their own.</summary>
    public static bool IsRelease(string name) =>
        name.EndsWith("_release", StringComparison.Ordinal) || name.EndsWith("_unbind", StringComparison.Ordinal) || name == "tender_free";

    /// <summary>An event in words.</summary>
    public static string Of(string name) => name switch
    {
        "crossover" => "crossover",
        "crossover_release" => "off the stop nut",
        "tender_solid" => "tender closed",
        "tender_free" => "tender open",
        "upper_bind" => "upper spring binds",
        "upper_unbind" => "upper spring opens",
        "lower_bind" => "lower spring binds",
        "lower_unbind" => "lower spring opens",
        "coil_bind" => "coil bind",
        "coil_unbind" => "coils open",
        "bump_stop" => "bump stop",
        "bump_stop_release" => "off the bump stop",
        "bottom_out" => "metal to metal",
        "bottom_out_release" => "off the metal",
        "top_out" => "tops out",
        "top_out_release" => "off the top-out",
        "liftoff" => "tyre lifts",
        "touchdown" => "tyre lands",
        _ => name.Replace('_', ' '),
    };

    /// <summary>Rank for labelling, 0 first.</summary>
    public static int Rank(string name) => name switch
    {
        "bottom_out" => 0,
        "coil_bind" => 1,
        "bump_stop" => 2,
        "top_out" => 3,
        "upper_bind" or "lower_bind" => 4,
        "liftoff" or "touchdown" => 5,
        "crossover" => 6,
        "tender_solid" => 7,
        _ => 8,
    };

    /// <summary>"once", "twice", "7 times".</summary>
    public static string Times(int count) => count switch
    {
        1 => "once",
        2 => "twice",
        _ => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{count} times"),
    };
}
