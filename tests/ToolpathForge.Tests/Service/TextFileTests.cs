using System.Text;
using ToolpathForge.Findings;
using ToolpathForge.Service.Files;
using ToolpathForge.Tests.Support;

namespace ToolpathForge.Tests.Service;

public class TextFileTests
{
    private static Finding Refused(string path, int largest = 1000)
    {
        (string? text, Finding? finding) = TextFile.Read(path, Path.GetFileName(path), largest);
        Assert.Null(text);
        Assert.Equal(Severity.Stop, finding!.Kind.Severity);
        Assert.True(finding.Kind.Unusable);
        return finding;
    }

    [Fact]
    public void A_byte_order_mark_is_accepted_and_left_out()
    {
        using var scratch = new Scratch();
        string path = scratch.Path("porch.toml");
        File.WriteAllBytes(path, [0xef, 0xbb, 0xbf, .. "größe = 1\n"u8]);
        Assert.Equal("größe = 1\n", TextFile.Read(path, path, 1000).Text);
    }

    [Theory]
    [InlineData(new byte[] { (byte)'a', (byte)'\n', 0xc3, 0xa4, (byte)'b', 0xff, (byte)'c' }, 2, 3)]
    [InlineData(new byte[] { 0xff, 0xfe, (byte)'a', 0 }, 1, 1)]
    [InlineData(new byte[] { (byte)'a', 0xe2, 0x82 }, 1, 2)]
    public void Text_in_another_encoding_is_refused_at_its_first_wrong_byte(byte[] bytes, int line, int column)
    {
        using var scratch = new Scratch();
        string path = scratch.Path("porch.toml");
        File.WriteAllBytes(path, bytes);
        Finding finding = Refused(path);
        Assert.Equal("file-not-utf-8", finding.Kind.Code);
        Assert.Equal((line, column), (finding.Place.Line, finding.Place.Column));
    }

    [Fact]
    public void A_missing_file_is_told_with_the_near_one()
    {
        using var scratch = new Scratch();
        scratch.Write("porch.toml", "");
        Finding finding = Refused(scratch.Path("proch.toml"));
        Assert.Equal("file-missing", finding.Kind.Code);
        Assert.Equal("Did you mean porch.toml?", finding.Args.Single(a => a.Name == "near").Text);
        Assert.Equal("Nothing of a similar name lies there.", Refused(scratch.Path("boathouse")).Args.Single(a => a.Name == "near").Text);
        Assert.Equal("The folder itself is not there.", Refused(scratch.Path("no", "porch.toml")).Args.Single(a => a.Name == "near").Text);
    }

    [Fact]
    public void A_folder_an_oversized_file_and_an_impossible_name_are_told_apart()
    {
        using var scratch = new Scratch();
        Assert.Equal("file-is-folder", Refused(scratch.Root).Kind.Code);
        string path = scratch.Write("large", new string('x', 1001));
        Assert.Equal("file-over-size", Refused(path).Kind.Code);
        Assert.Equal(1001, TextFile.Read(path, path, 1001).Text!.Length);
        Assert.Equal("file-unreadable", Refused("a\0b").Kind.Code);
    }

    [Fact]
    public void An_endless_file_is_read_no_further_than_the_limit()
    {
        Assert.SkipUnless(File.Exists("/dev/zero"), "This system has no endless file.");
        Assert.Equal("file-over-size", Refused("/dev/zero", 1 << 20).Kind.Code);
    }
}
