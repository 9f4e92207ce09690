using System.Globalization;
using Training.Sequencing;
using Training.Sequencing.Answers;
using Training.Sequencing.Procedures;
using Training.Sequencing.Verdicts;
using Training.Web.Features.Shared;

namespace Training.Web.Tests.WordBooks;

/// <summary>What is put into sentences far below is said in the reader's language, with the texts of that language.</summary>
public sealed class SayingTests
{
    private static readonly Procedure English = new(new("job"), "A job", 1)
    {
        Facts = [new(new("key"), [new("off"), new("on")])],
        Steps =
        [
            new(new("read"), "Read the lamps"),
            new(new("start"), "Start the engine") { Sets = [new(new("key"), new("on"))] },
        ],
        Rules =
        [
            new OrderRule(new("lamps-first"), [new("read")], [new("start")]) { Because = "A lamp may forbid it", Otherwise = "You run it with a fault" },
        ],
    };

    private static readonly Procedure Spanish = English with
    {
        Facts = [English.Facts[0] with { Called = "llave", ValuesCalled = ["quitada", "puesta"] }],
        Steps = [English.Steps[0] with { Do = "Leer los testigos" }, English.Steps[1] with { Do = "Arrancar el motor" }],
        Rules = [((OrderRule)English.Rules[0]) with { Because = "Un testigo puede prohibirlo", Otherwise = "Funciona con una avería" }],
    };

    [Fact]
    public void A_finding_is_said_in_Spanish_with_the_Spanish_steps_and_reasons() => Assert.Equal(
        "«Arrancar el motor» (lugar 1) se hizo antes que «Leer los testigos» (lugar 2). Un testigo puede prohibirlo. "
        + "Lo que puede pasar: Funciona con una avería. Primero «Leer los testigos», después «Arrancar el motor».",
        In("es", () => new WordBook().Say(Wrong("start", "read"), Spanish)));

    [Fact]
    public void What_was_left_out_is_said_in_Spanish_with_the_Spanish_reason() => Assert.Equal(
        "«Leer los testigos» se omitió. Un testigo puede prohibirlo. Lo que puede pasar: Funciona con una avería. Añádalo.",
        In("es", () => new WordBook().Say(Wrong("start"), Spanish)));

    [Fact]
    public void A_finding_is_said_in_English_as_the_engine_says_it() =>
        Assert.Equal(Wrong("start", "read").Message, In("en-GB", () => new WordBook().Say(Wrong("start", "read"), English)));

    [Theory]
    [InlineData("read", "Done though it could not be done that day: “Read the lamps”")]
    [InlineData("skip", "Done though it is never right: “Skip the lamps”")]
    public void Results_tell_a_step_that_could_not_be_done_apart_from_what_is_never_right(string id, string told) => Assert.Equal(
        told, In("en-GB", () => new WordBook().Told(English with { Decoys = [new(new("skip"), "Skip the lamps")] }, new Chance(ChanceKind.Decoy, id))));

    [Fact]
    public void A_time_is_written_with_the_readers_decimal_mark()
    {
        Sentence sentence = $"Wait at least {new SpokenTime(90.5m)} after “{new StepName(new("read"), "Read the lamps")}”.";
        Assert.Equal("Esperar al menos 90,5 s después de «Leer los testigos».", In("es", () => new WordBook().Say(sentence, Spanish)));
    }

    [Fact]
    public void A_state_is_called_as_the_translation_calls_it()
    {
        Sentence sentence = $"{new FactId("key")} is “{new FactState(new("key"), new("on"))}”";
        Assert.Equal("llave está en «puesta»", In("es", () => new WordBook().Say(sentence, Spanish)));
    }

    [Fact]
    public void Braces_in_a_text_are_taken_as_they_are()
    {
        Refusal refusal = new("A {brace} stays.");
        Assert.Equal("A {brace} stays.", refusal.Sentence);
        Assert.Equal("A {brace} stays.", In("es", () => new WordBook().Say(refusal)));
    }

    private static Finding Wrong(params string[] order) =>
        Grader.For(English).Value.Grade(new Answer([.. order.Select(id => new Entry(new(id)))])).Value.Findings[0];

    private static string In(string culture, Func<string> say)
    {
        var (before, ui) = (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture);
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo(culture);
            return say();
        }
        finally
        {
            (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture) = (before, ui);
        }
    }
}
