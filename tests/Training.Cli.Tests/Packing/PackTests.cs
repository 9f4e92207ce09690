namespace Training.Cli.Tests.Packing;

public sealed class PackTests : CommandLine
{
    private string Content()
    {
        foreach (var file in Directory.EnumerateFiles(Path.Combine(Data, "good"), "*", SearchOption.AllDirectories))
            Write(Path.Combine("content", Path.GetRelativePath(Path.Combine(Data, "good"), file)), File.ReadAllText(file));
        return Path.Combine(Folder, "content");
    }

    private string Packed()
    {
        var file = Path.Combine(Folder, "out.zip");
        var outcome = Run("pack", Content(), "--module", "01-relay-tray", "--module", "02-refit", "--out", file, "--by", "Eastvale", "--licence", "Ours");
        Assert.Equal((ExitCode.Done, ""), (outcome.Code, outcome.Errors));
        return file;
    }

    [Fact]
    public void A_pack_can_be_checked_and_says_who_made_it()
    {
        var outcome = Run("unpack", Packed(), "--check");
        Assert.Equal((ExitCode.Done, ""), (outcome.Code, outcome.Errors));
        Assert.Equal(["made by: Eastvale", "licence: Ours", "modules: 01-relay-tray, 02-refit"], outcome.Lines[..3]);
        Assert.Matches("^[0-9]+ files checked, 0 errors[.]$", outcome.Lines[3]);
    }

    [Fact]
    public void A_pack_that_is_unpacked_is_content_that_passes_the_check()
    {
        var there = Path.Combine(Folder, "there", "content");
        Assert.Equal(ExitCode.Done, Run("unpack", Packed(), "--out", there).Code);
        Assert.Equal(ExitCode.Done, Run("check", there).Code);
        Assert.True(File.Exists(Path.Combine(there, "modules", "01-relay-tray", "lesson.md")));
    }

    [Fact]
    public void A_folder_that_holds_something_is_not_written_to()
    {
        var file = Packed();
        Write("full/mine.txt", "mine");
        var outcome = Run("unpack", file, "--out", Path.Combine(Folder, "full"));
        Assert.Equal(ExitCode.AtFault, outcome.Code);
        Assert.Contains("is not empty", outcome.Errors, StringComparison.Ordinal);
        Assert.Single(Directory.GetFiles(Path.Combine(Folder, "full"), "*", SearchOption.AllDirectories));
    }

    [Fact]
    public void What_is_no_pack_is_refused_and_nothing_is_written()
    {
        var there = Path.Combine(Folder, "there");
        var outcome = Run("unpack", Write("no.zip", "PK but no pack"), "--out", there);
        Assert.Equal(ExitCode.AtFault, outcome.Code);
        Assert.Contains("no.zip:1:1: error: This is no pack", outcome.Errors, StringComparison.Ordinal);
        Assert.False(Directory.Exists(there));
    }

    [Fact]
    public void A_module_that_is_not_there_and_content_that_is_broken_are_told()
    {
        var outcome = Run("pack", Content(), "--module", "99-none", "--out", Path.Combine(Folder, "out.zip"));
        Assert.Equal(ExitCode.AtFault, outcome.Code);
        Assert.Contains("There is no module “99-none”.", outcome.Errors, StringComparison.Ordinal);
        Write("content/competencies/broken.yaml", "id: broken");
        Assert.Equal(ExitCode.AtFault, Run("pack", Path.Combine(Folder, "content"), "--module", "02-refit", "--out", Path.Combine(Folder, "out.zip")).Code);
        Assert.False(File.Exists(Path.Combine(Folder, "out.zip")));
    }

    [Theory]
    [InlineData("pack")]
    [InlineData("pack content --out a.zip")]
    [InlineData("pack content --module a")]
    [InlineData("pack content --module a --out a.zip --out b.zip")]
    [InlineData("pack content --module a --out")]
    [InlineData("pack content --colour red")]
    [InlineData("pack content other --module a --out a.zip")]
    [InlineData("unpack")]
    [InlineData("unpack a.zip")]
    [InlineData("unpack a.zip --out")]
    [InlineData("unpack --check --out a")]
    public void Wrong_words_show_how_it_is_written(string words) => Assert.Equal(ExitCode.WrongUsage, Run(words.Split(' ')).Code);
}
