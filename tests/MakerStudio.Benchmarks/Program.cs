// How to run, from the root of the repository:
//
//   dotnet run -c Release --project tests/MakerStudio.Benchmarks -- --filter '*'
//   dotnet run -c Release --project tests/MakerStudio.Benchmarks -- --filter '*StockBenchmarks*' --job short
//
// Read the Ratio column: it compares the methods of one class with its baseline within one run, and so means much
// the same on any machine. The times themselves do not. Reports go to BenchmarkDotNet.Artifacts/, which is not kept.
using BenchmarkDotNet.Running;

BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
