using QuarterCar.Cli;

using var interrupt = new Interrupt();
using var session = Session.OfProcess(interrupt.Token);
return (int)CommandLine.Run(args, session);
