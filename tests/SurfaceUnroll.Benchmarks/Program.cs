using BenchmarkDotNet.Running;
using SurfaceUnroll.Benchmarks.Bench;
using SurfaceUnroll.Benchmarks.CutFiles;
using SurfaceUnroll.Benchmarks.Flattening;
using SurfaceUnroll.Benchmarks.Nesting;
using SurfaceUnroll.Benchmarks.Photos;
using SurfaceUnroll.Benchmarks.Uncertainty;

if (args is ["flatten", ..]) return FlatteningComparison.Run(args[1..]);
if (args is ["photo", var count, var width]) return PhotoTrials.Run(int.Parse(count, System.Globalization.CultureInfo.InvariantCulture), int.Parse(width, System.Globalization.CultureInfo.InvariantCulture));
if (args is ["nest"]) return NestingComparison.Run();
if (args is ["cutfiles"]) return CutFileTimes.Run();
if (args is ["error", ..]) return ErrorComparison.Run(args[1..]);
if (args is ["bench", "pictures"]) return BenchPictures.Run();
if (args is ["bench", "latency"]) return BenchLatency.Run();
if (args is ["bench", ..]) return BenchSoak.Run(args[1..]);
BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
return 0;
