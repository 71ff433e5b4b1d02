using System.Globalization;

using BenchmarkDotNet.Running;

using QuarterCar.Benchmarks;

CultureInfo.DefaultThreadCurrentCulture = CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
if (args is ["yardstick", .. var rest])
{
    Yardstick.Print(After("--peer"), After("--parameters"));
    return 0;

    string? After(string flag)
    {
        int i = Array.IndexOf(rest, flag);
        return i >= 0 && i + 1 < rest.Length ? rest[i + 1] : null;
    }
}

if (args is ["setups"])
{
    SetupRates.Print();
    return 0;
}

if (args is ["plain"])
{
    PlainComparison.Print();
    return 0;
}

BenchmarkSwitcher.FromAssembly(typeof(Yardstick).Assembly).Run(args);
return 0;
