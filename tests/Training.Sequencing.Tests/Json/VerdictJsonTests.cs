using System.Text.Json;
using Training.Sequencing.Json;

namespace Training.Sequencing.Tests.Json;

public sealed class VerdictJsonTests
{
    [Fact]
    public void A_verdict_is_printed_by_the_contract()
    {
        var json = VerdictJson.Write(Sample.RelayTray.Grade("key-off rest:20 hose lift-tray hook"));
        using var document = JsonDocument.Parse(json);
        var root = document.RootElement;
        Assert.Equal(
            ["accepted", "safe", "score", "kept", "cost", "findings", "mend", "nearest", "replay"],
            root.EnumerateObject().Select(part => part.Name));
        Assert.Equal(
            ["kind", "rule", "steps", "places", "harm", "severity", "message"],
            root.GetProperty("findings")[1].EnumerateObject().Select(part => part.Name));
        Assert.Equal("too-soon", root.GetProperty("findings")[1].GetProperty("kind").GetString());
        Assert.Equal("equipment", root.GetProperty("findings")[1].GetProperty("harm").GetString());
        Assert.Equal(
            """{"moves":[],"drop":[3],"add":[],"waits":[{"step":"rest","seconds":60}]}""",
            root.GetProperty("mend").GetRawText());
        Assert.Equal(
            """[{"step":"key-off"},{"step":"rest","seconds":60},{"step":"lift-tray"},{"step":"hook"}]""",
            root.GetProperty("nearest").GetRawText());
        Assert.Equal(
            """{"place":4,"step":"lift-tray","startsAt":25,"endsAt":25,"facts":{"key":"off"},"findings":[1]}""",
            root.GetProperty("replay")[3].GetRawText());
        Assert.Equal(50m, root.GetProperty("score").GetDecimal());
    }
}
