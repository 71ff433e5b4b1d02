System.Console.Error.WriteLine("quartercar");
return 2;
