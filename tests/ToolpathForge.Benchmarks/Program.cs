using BenchmarkDotNet.Running;
using ToolpathForge.Benchmarks;
using ToolpathForge.Benchmarks.Ratios;

// "ratios" prints the figures in under three minutes; anything else goes to BenchmarkDotNet.
if (args is ["ratios"])
{
    return RatioList.Print();
}

BenchmarkSwitcher.FromAssembly(typeof(OffsetBenchmarks).Assembly).Run(args);
return 0;
