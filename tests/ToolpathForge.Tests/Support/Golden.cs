using System.Text;

namespace ToolpathForge.Tests.Support;

/// <summary>Compares bytes with a file under tests/data/golden. UPDATE_GOLDEN=1 rewrites the file instead; read the difference before you commit it.</summary>
internal static class Golden
{
    internal static void Same(string name, string text) => Same(name, Encoding.UTF8.GetBytes(text));

    internal static void Same(string name, byte[] bytes) => SameFile(Repo.Path("tests", "data", "golden", name), bytes);

    internal static void SameFile(string path, byte[] bytes)
    {
        if (Environment.GetEnvironmentVariable("UPDATE_GOLDEN") == "1")
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllBytes(path, bytes);
            return;
        }

        Assert.True(File.Exists(path), $"{path} is missing; UPDATE_GOLDEN=1 writes it.");
        byte[] kept = File.ReadAllBytes(path);
        int at = kept.AsSpan().CommonPrefixLength(bytes);
        if (at < kept.Length || at < bytes.Length)
        {
            int from = Math.Max(0, at - 40);
            string Excerpt(byte[] b) => Encoding.UTF8.GetString(b, from, Math.Min(120, b.Length - from));
            Assert.Fail($"{Path.GetFileName(path)} differs at byte {at}.\nkept: …{(from < kept.Length ? Excerpt(kept) : "")}\nnow:  …{(from < bytes.Length ? Excerpt(bytes) : "")}\nUPDATE_GOLDEN=1 rewrites it.");
        }
    }
}
