using System.Globalization;

using QuarterCar.Fuzzing;

// dotnet run -c Release --project tests/QuarterCar.Fuzzing -- [--inputs N] [--seconds S] [--seed S] [--reader NAME] [--counted]
string Value(string option, string standard) => Array.IndexOf(args, option) is >= 0 and var at && at + 1 < args.Length ? args[at + 1] : standard;
Coverage.Clear(); // before anything that counts
if (args.Contains("--counted") && !Coverage.IsOn) return Coverage.RunCounted(args);
long inputs = long.Parse(Value("--inputs", "1000000"), CultureInfo.InvariantCulture);
var time = TimeSpan.FromSeconds(double.Parse(Value("--seconds", "1e6"), CultureInfo.InvariantCulture));
int seed = int.Parse(Value("--seed", "1"), CultureInfo.InvariantCulture);
return LongRun.Of([.. Readers.All.Where(r => Value("--reader", r.Name) == r.Name)], inputs, time, seed);
