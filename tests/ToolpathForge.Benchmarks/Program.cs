using BenchmarkDotNet.Running;
using ToolpathForge.Benchmarks;
using ToolpathForge.Benchmarks.Ratios;

// "ratios" prints the figures in under three minutes; anything else goes to BenchmarkDotNet.
if (args is ["ratios"])
{
    return RatioList.Print();
}

// A process of its own, so that its largest memory is that of one drawing.
if (args is [TraceFigures.Alone, string file])
{
    return TraceFigures.TraceAlone(file);
}

BenchmarkSwitcher.FromAssembly(typeof(OffsetBenchmarks).Assembly).Run(args);
return 0;
