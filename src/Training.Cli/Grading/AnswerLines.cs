using System.Buffers;
using Training.Sequencing.Json;

namespace Training.Cli.Grading;

/// <summary>One answer of a file of answers.</summary>
/// <param name="Number">Its line, from 1.</param>
/// <param name="Json">The text; null where the line is longer than any answer.</param>
internal readonly record struct AnswerLine(int Number, string? Json);

/// <summary>
/// Reads answers one a line. Of a line that is longer than any answer nothing is kept, so that a line without an end takes
/// no more memory than the longest answer.
/// </summary>
internal sealed class AnswerLines(TextReader answers)
{
    private const int BlockSize = 32_768;
    private static readonly SearchValues<char> LineEnds = SearchValues.Create("\r\n");
    private readonly char[] block = new char[BlockSize];
    private readonly ArrayBufferWriter<char> begun = new();
    private int from;
    private int to;
    private int number;
    private bool isAfterReturn;

    /// <summary>The lines on which something stands.</summary>
    public IEnumerable<AnswerLine> Read()
    {
        while (Fill())
        {
            number++;
            if (Line() is { } line)
            {
                if (!string.IsNullOrWhiteSpace(line)) yield return new(number, line);
                continue;
            }

            yield return new(number, null);
            while (Fill() && !Skip())
            {
                // The rest of the line is passed over, a block at a time.
            }
        }
    }

    /// <summary>A whole text; null where it is longer than any answer.</summary>
    public static string? Whole(TextReader answer)
    {
        var text = new ArrayBufferWriter<char>();
        while (text.WrittenCount <= AnswerJson.LongestText)
        {
            var read = answer.Read(text.GetSpan(BlockSize));
            if (read <= 0) return text.WrittenSpan.ToString();
            text.Advance(read);
        }

        return null;
    }

    /// <summary>Reads on to the end of a line; null where that is too far.</summary>
    private string? Line()
    {
        begun.ResetWrittenCount();
        do
        {
            var rest = block.AsSpan(from, to - from);
            var length = rest.IndexOfAny(LineEnds);
            if (begun.WrittenCount + (length < 0 ? rest.Length : length) > AnswerJson.LongestText) return null;
            if (length < 0)
            {
                begun.Write(rest);
                from = to;
                continue;
            }

            GoBehind(length);
            if (begun.WrittenCount == 0) return rest[..length].ToString();
            begun.Write(rest[..length]);
            return begun.WrittenSpan.ToString();
        }
        while (Fill());
        return begun.WrittenSpan.ToString();
    }

    /// <summary>Passes over what is left of a line; false where it goes on behind the block.</summary>
    private bool Skip()
    {
        var length = block.AsSpan(from, to - from).IndexOfAny(LineEnds);
        if (length >= 0) GoBehind(length);
        else from = to;
        return length >= 0;
    }

    private void GoBehind(int length)
    {
        isAfterReturn = block[from + length] == '\r';
        from += length + 1;
    }

    /// <summary>Sees to it that there is something to read, or says that there is nothing more.</summary>
    private bool Fill()
    {
        while (true)
        {
            if (from == to) (from, to) = (0, Math.Max(0, answers.Read(block, 0, block.Length)));
            if (to == 0) return false;
            // The two signs of one end of a line may stand in two blocks.
            if (isAfterReturn && block[from] == '\n') from++;
            isAfterReturn = false;
            if (from < to) return true;
        }
    }
}
