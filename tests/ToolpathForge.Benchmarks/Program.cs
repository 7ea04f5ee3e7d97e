using BenchmarkDotNet.Running;
using ToolpathForge.Benchmarks;
using ToolpathForge.Benchmarks.Ratios;

// "ratios" prints the figures in under three minutes, "ratios trace" those of one group; anything else goes to BenchmarkDotNet.
if (args is ["ratios", .. { Length: <= 1 } only])
{
    return RatioList.Print(only is [var group] ? group : null);
}

// A process of its own, so that its largest memory is that of one drawing.
if (args is [TraceFigures.Alone, string file])
{
    return TraceFigures.TraceAlone(file);
}

// The service in a process of its own, of this build.
if (args is [HostFigures.ServeAlone])
{
    return ToolpathForge.Service.Host.HostServer.Run(Console.OpenStandardInput(), Console.OpenStandardOutput(), CancellationToken.None);
}

BenchmarkSwitcher.FromAssembly(typeof(OffsetBenchmarks).Assembly).Run(args);
return 0;
