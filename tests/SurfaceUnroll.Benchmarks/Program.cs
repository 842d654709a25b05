using BenchmarkDotNet.Running;
using SurfaceUnroll.Benchmarks.Flattening;

if (args is ["flatten", ..]) return FlatteningComparison.Run(args[1..]);
BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
return 0;
