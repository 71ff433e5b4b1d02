using System.Globalization;

namespace QuarterCar.Reports.Tests;

/// <summary>Runs something as if on a machine of another culture.</summary>
internal static class Cultures
{
    public static T In<T>(string culture, Func<T> act)
    {
        var before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo(culture);
        try
        {
            return act();
        }
        finally
        {
            CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = before;
        }
    }
}
