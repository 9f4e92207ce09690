namespace Training.Content.Tests;

public sealed class ContentFolderTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("content-folder-").FullName;

    public ContentFolderTests()
    {
        foreach (var file in ContentFolders.Good)
        {
            Directory.CreateDirectory(Path.GetDirectoryName(At(file.Path))!);
            File.WriteAllText(At(file.Path), file.Text);
        }
    }

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void A_link_is_not_read_but_told_once()
    {
        File.CreateSymbolicLink(At("scenarios/elsewhere.md"), "/etc/passwd");
        Assert.Equal(["scenarios/elsewhere.md"], Faulty());
        Assert.DoesNotContain(ContentFolder.Read(folder), file => file.Text.Contains("root:", StringComparison.Ordinal));
    }

    [Fact]
    public void A_link_that_leads_round_in_a_circle_is_told_once()
    {
        Directory.CreateSymbolicLink(At("scenarios/round"), At("scenarios"));
        Assert.Equal(["scenarios/round"], Faulty());
    }

    [Fact]
    public void A_link_that_leads_nowhere_is_told_once()
    {
        File.CreateSymbolicLink(At("modules/01-relay-tray/pictures/gone.svg"), "/no/such/file");
        Assert.Equal(["modules/01-relay-tray/pictures/gone.svg"], Faulty());
    }

    [Fact]
    public void A_lock_that_an_editor_lays_beside_a_file_does_no_harm()
    {
        File.CreateSymbolicLink(At("scenarios/.#half-way.md"), "somebody@workshop.4711:1");
        Assert.Empty(Faulty());
    }

    [Fact]
    public void A_link_beside_the_content_does_no_harm_and_is_not_followed()
    {
        Directory.CreateSymbolicLink(At("notes"), "/etc");
        Assert.Empty(Faulty());
        Assert.Equal(ContentFolders.Good.Count, ContentFolder.Read(folder).Count);
    }

    [Fact]
    public void An_empty_file_is_told_once()
    {
        File.WriteAllText(At("scenarios/begun.md"), "");
        Assert.Equal(["scenarios/begun.md"], Faulty());
    }

    [Fact]
    public void The_folder_itself_may_be_a_link()
    {
        var link = folder + "-link";
        Directory.CreateSymbolicLink(link, folder);
        try
        {
            Assert.Equal(ContentFolders.Good, ContentFolder.Read(link));
        }
        finally
        {
            Directory.Delete(link);
        }
    }

    private string[] Faulty() =>
        [.. ContentReader.Read(ContentFolder.Read(folder)).Problems.Where(problem => problem.HoldsBack).Select(problem => problem.File)];

    private string At(string path) => Path.Combine(folder, path);
}
