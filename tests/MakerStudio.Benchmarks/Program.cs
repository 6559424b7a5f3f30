System.Console.WriteLine("Run with: dotnet run -c Release");
