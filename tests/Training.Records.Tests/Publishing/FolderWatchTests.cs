using System.Diagnostics;
using Training.Records.Publishing;
using static Training.Records.Tests.TestWorld;

namespace Training.Records.Tests.Publishing;

public sealed class FolderWatchTests : IDisposable
{
    private const string Procedure = "procedures/change-tray.yaml";
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("watched-");

    public FolderWatchTests()
    {
        foreach (var file in Files) Write(file.Path, file.Text);
    }

    public void Dispose()
    {
        if (Directory.Exists(folder.FullName)) folder.Delete(recursive: true);
    }

    [Fact]
    public async Task A_folder_that_has_not_changed_is_not_read_again()
    {
        await using var world = await Create();
        var watch = Watch(world);
        Assert.False((await watch.Look())!.IsHeldBack);
        Assert.Null(await watch.Look());
    }

    [Fact]
    public async Task A_file_with_another_name_is_seen()
    {
        await using var world = await Create();
        var watch = Watch(world);
        await watch.Look();
        File.Move(At("competencies/tray-theory.yaml"), At("competencies/tray-lore.yaml"));
        Assert.NotNull(await watch.Look());
    }

    [Fact]
    public async Task A_text_of_the_same_length_and_of_an_older_time_is_served()
    {
        await using var world = await Create();
        var watch = Watch(world);
        await watch.Look();
        var old = File.ReadAllText(At(Procedure));
        Write(Procedure, old.Replace("Change the relay tray", "Change one relay tray"[..21], StringComparison.Ordinal));
        Assert.Equal(old.Length, File.ReadAllText(At(Procedure)).Length);
        File.SetLastWriteTimeUtc(At(Procedure), new(2001, 1, 1, 0, 0, 0, DateTimeKind.Utc));
        await watch.Look();
        Assert.Equal("Change one relay tray", world.One<Library>().Current.Content.FindProcedure(ChangeTray)!.Procedure.Title);
    }

    [Fact]
    public async Task A_folder_that_went_away_is_told_and_what_was_published_is_served_on_until_it_is_back()
    {
        await using var world = await Create();
        var watch = Watch(world);
        await watch.Look();
        var away = folder.FullName + "-away";
        Directory.Move(folder.FullName, away);
        for (var look = 0; look < 2; look++)
        {
            var state = await watch.Look();
            Assert.Equal((true, 1), (state!.IsHeldBack, state.Served));
            Assert.Equal(state, Ok(world.One<Publisher>().State(world.Trainer)));
        }

        Directory.Move(away, folder.FullName);
        Assert.False((await watch.Look())!.IsHeldBack);
    }

    [Fact]
    public async Task A_pipe_is_told_and_does_not_stop_what_comes_after_it()
    {
        await using var world = await Create();
        var watch = Watch(world);
        await watch.Look();
        using (var made = Process.Start("mkfifo", At("scenarios/endless.md"))) await made.WaitForExitAsync(TestContext.Current.CancellationToken);
        var look = watch.Look();
        Assert.Same(look, await Task.WhenAny(look, Task.Delay(TimeSpan.FromSeconds(20), TestContext.Current.CancellationToken)));
        Assert.Equal("scenarios/endless.md", Assert.Single((await look)!.Problems, problem => problem.HoldsBack).File);
        File.Delete(At("scenarios/endless.md"));
        Write(Procedure, File.ReadAllText(At(Procedure)).Replace("Change the relay tray", "Change a relay tray", StringComparison.Ordinal));
        Assert.Equal(2, (await watch.Look())!.Served);
    }

    [Fact]
    public async Task What_could_not_be_read_is_tried_again_though_nothing_else_changed()
    {
        await using var world = await Create();
        var watch = Watch(world);
        File.CreateSymbolicLink(At("scenarios/elsewhere.md"), "/etc/hostname");
        Assert.True((await watch.Look())!.IsHeldBack);
        Assert.Null(await watch.Look());
        File.Delete(At("scenarios/elsewhere.md"));
        Assert.False((await watch.Look())!.IsHeldBack);
    }

    private FolderWatch Watch(TestWorld world) => new(folder.FullName, world.One<Publisher>());

    private string At(string path) => Path.Combine(folder.FullName, path);

    private void Write(string path, string text)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(At(path))!);
        File.WriteAllText(At(path), text);
    }
}
