using Microsoft.Extensions.Caching.Memory;
using Training.Content;
using Training.Content.Scenarios;
using Training.Records.Asking;
using Training.Records.Publishing;
using Training.Sequencing.Drawing;

namespace Training.Records.Examining;

/// <summary>
/// How hard a question is before anybody has answered it: the points that somebody gets who knows nothing and answers by
/// lot, from 0 (knowledge alone gives points) to 100 (anything is right). The mean of <see cref="Answers"/> blind answers
/// to each of <see cref="Drawings"/> drawings of a scenario, graded as people's answers are. One for the whole process.
/// </summary>
/// <remarks>
/// Our own measure: it takes in every kind of question by the points that a paper is passed by. What people find hard is
/// known only once they have answered; the results pages show that.
/// </remarks>
internal sealed class BlindScores(Questions questions) : IDisposable
{
    /// <summary>How many drawings of a scenario are looked at.</summary>
    public const int Drawings = 6;

    /// <summary>How many blind answers are given to each drawing.</summary>
    public const int Answers = 12;

    private readonly MemoryCache known = new(new MemoryCacheOptions { SizeLimit = 4096 });

    /// <summary>The blind points of a scenario when it is asked in a way; the same whoever asks and whenever.</summary>
    /// <param name="library">The publication that is drawn from.</param>
    /// <param name="kind">How it is asked.</param>
    /// <param name="scenario">Which.</param>
    public async ValueTask<double> Of(PublishedLibrary library, QuestionKind kind, ScenarioId scenario)
    {
        if (known.TryGetValue((library.Number, kind, scenario), out double points)) return points;
        var lots = new SeededDraw(0);
        var (sum, count) = (0m, 0);
        for (var drawing = 0; drawing < Drawings; drawing++)
        {
            var drawn = await questions.Draw(library, scenario, kind, lots.For(drawing));
            if (!drawn.IsOk) continue;
            for (var answer = 0; answer < Answers; answer++, count++)
                sum += drawn.Value.Judge(drawn.Value.BlindAnswer(lots), ContentLibrary.DefaultLanguage).Score;
        }

        return known.Set((library.Number, kind, scenario), count == 0 ? 0 : (double)(sum / count), new MemoryCacheEntryOptions { Size = 1 });
    }

    /// <inheritdoc/>
    public void Dispose() => known.Dispose();
}
