using System.IO.Compression;
using System.Text;
using CsCheck;
using Training.Content.Packing;

namespace Training.Content.Tests.Packing;

/// <summary>Packs of people who mean no good are refused whole, with a sentence, before anything is made of them.</summary>
public sealed class HostilePackTests
{
    private const string Lesson = "modules/01-a/lesson.md";

    [Fact]
    public void The_small_pack_that_all_of_these_are_made_of_is_taken() => Assert.True(Pack.Read(Made()).IsOk);

    [Theory]
    [InlineData("../evil.md")]
    [InlineData("modules/01-a/../../../evil.md")]
    [InlineData("modules/01-a/./lesson.md")]
    [InlineData("modules//01-a/lesson.md")]
    [InlineData("/etc/passwd")]
    [InlineData("/modules/01-b/lesson.md")]
    [InlineData("C:/modules/01-b/lesson.md")]
    [InlineData("c:lesson.md")]
    [InlineData("modules\\01-b\\lesson.md")]
    [InlineData("..\\..\\evil.md")]
    [InlineData("modules/01-b/")]
    [InlineData("modules/01-b/lesson.md\0.svg")]
    [InlineData("modules/01-b/lesson.md\n")]
    [InlineData("modules/01-b/lesson.exe")]
    [InlineData("modules/01-b/pictures/evil.html")]
    [InlineData("modules/01-b/pictures/labels.yaml")]
    [InlineData("modules/01-b/pictures/other.es.yaml")]
    [InlineData("procedures/Upper.yaml")]
    [InlineData("inner.zip")]
    [InlineData("scenarios/inner.zip")]
    [InlineData("README.md")]
    [InlineData("Pack.json")]
    [InlineData("modules/01-Ａ/lesson.md")]
    public void A_name_that_is_none_of_content_is_refused(string name) => Refused(Made((name, "text")), "");

    [Theory]
    [InlineData("procedures/b.yaml", "procedures/b.yaml")]
    [InlineData("pack.json", "")]
    public void A_name_that_stands_twice_is_refused(string one, string other)
    {
        (string, string)[] more = other.Length == 0 ? [(one, "{}")] : [(one, "id: b"), (other, "id: c")];
        Refused(Made(more), "two files of the name");
    }

    [Fact]
    public void Names_that_differ_in_capitals_alone_are_one_name_on_many_disks() =>
        Refused(Made(("modules/01-a/pictures/a.svg", "x"), ("modules/01-a/pictures/A.svg", "x")), "two files of the name");

    [Theory]
    [InlineData(0xA1FF)]
    [InlineData(0x61B0)]
    [InlineData(0x11B0)]
    public void A_link_or_a_device_is_refused(int unix) =>
        Refused(Made(entry => { if (entry.FullName == Lesson) entry.ExternalAttributes = unix << 16; }), "is a link");

    [Fact]
    public void A_file_that_unpacks_to_more_than_a_mebibyte_is_refused() =>
        Refused(Made((Lesson.Replace("01-a", "01-b", StringComparison.Ordinal), new string('a', ContentFile.LargestSize + 1))), "larger than 1 MiB");

    [Fact]
    public void A_bomb_of_many_files_that_each_pass_is_refused_by_what_they_hold_together()
    {
        var bytes = Made([.. Enumerable.Range(0, 60).Select(i => ($"procedures/b{i}.yaml", new string('a', ContentFile.LargestSize)))]);
        Assert.True(bytes.Length < 200_000, "It is a bomb only where it is small.");
        Refused(bytes, "far more than its size says");
    }

    [Fact]
    public void A_size_that_the_header_makes_small_deceives_nobody()
    {
        var bytes = Made((Lesson.Replace("01-a", "01-b", StringComparison.Ordinal), new string('a', ContentFile.LargestSize + 1)));
        // The uncompressed sizes of all entries, in the local headers and in the directory, are set to 5.
        foreach (var (mark, at) in new[] { ("PK\u0003\u0004", 22), ("PK\u0001\u0002", 24) })
            for (var i = 0; i + at + 4 < bytes.Length; i++)
                if (Encoding.Latin1.GetString(bytes, i, 4) == mark) BitConverter.GetBytes(5).CopyTo(bytes, i + at);
        Assert.False(Pack.Read(bytes).IsOk);
    }

    [Fact]
    public void Ten_thousand_files_are_refused() =>
        Refused(Made([.. Enumerable.Range(0, 10_000).Select(i => ($"procedures/p{i}.yaml", ""))]), "more than 2000 files");

    [Fact]
    public void What_is_larger_than_a_pack_may_be_is_not_even_opened() => Refused(new byte[Pack.LargestSize + 1], "larger than 16 MiB");

    [Fact]
    public void A_file_that_is_locked_with_a_password_is_refused()
    {
        var bytes = Made();
        // Bit 0 of the general purpose flags (APPNOTE.TXT 4.4.4), in the local headers and in the directory.
        foreach (var (mark, at) in new[] { ("PK\u0003\u0004", 6), ("PK\u0001\u0002", 8) })
            for (var i = 0; i + at < bytes.Length - 4; i++)
                if (Encoding.Latin1.GetString(bytes, i, 4) == mark) bytes[i + at] |= 1;
        Refused(bytes, "locked with a password");
    }

    [Fact]
    public void Bytes_that_are_not_UTF_8_are_refused() => Refused(Raw(("procedures/b.yaml", [0x69, 0xFF, 0xFE])), "not in UTF-8");

    [Fact]
    public void A_zip_under_the_name_of_a_text_is_refused() => Refused(Raw(("scenarios/inner.md", Made())), "");

    [Theory]
    [InlineData("<script>alert(1)</script>", "<script> is not allowed")]
    [InlineData("<rect onload=\"alert(1)\"/>", "would run something")]
    [InlineData("<rect style=\"fill: url(https://example.org/a)\"/>", "fetches something")]
    [InlineData("<foreignObject/>", "is not allowed")]
    public void A_picture_that_runs_or_fetches_something_is_refused_and_the_rest_with_it(string evil, string sentence) => Refused(
        Made(("modules/01-a/pictures/evil.svg", $"<svg xmlns=\"http://www.w3.org/2000/svg\"><title>t</title>{evil}</svg>")), sentence);

    [Fact]
    public void A_picture_that_does_neither_is_taken() =>
        Assert.True(Pack.Read(Made(("modules/01-a/pictures/good.svg", "<svg xmlns=\"http://www.w3.org/2000/svg\"><title>t</title><rect/></svg>"))).IsOk);

    [Fact]
    public void A_file_that_was_altered_on_the_way_is_told()
    {
        var pack = Pack.Of([new(Lesson, "one"), new("procedures/a.yaml", "id: a")], "Somebody", "None", []);
        Refused(Zip([("pack.json", NoteOf(pack)), (Lesson, "two"u8.ToArray()), ("procedures/a.yaml", "id: a"u8.ToArray())]), "not what the note");
        Refused(Zip([("pack.json", NoteOf(pack)), (Lesson, "one"u8.ToArray())]), "not what its note lists");
    }

    [Theory]
    [InlineData("")]
    [InlineData("{")]
    [InlineData("null")]
    [InlineData("[]")]
    [InlineData("{\"format\":\"chassis-training-pack\",\"version\":1}")]
    [InlineData("{\"format\":\"another\",\"version\":1,\"madeBy\":\"a\",\"licence\":\"b\",\"modules\":[],\"files\":[]}")]
    [InlineData("{\"format\":\"chassis-training-pack\",\"version\":1,\"madeBy\":\"\",\"licence\":\"b\",\"modules\":[],\"files\":[]}")]
    [InlineData("{\"format\":\"chassis-training-pack\",\"version\":1,\"madeBy\":\"a\",\"licence\":\"b\",\"modules\":[null],\"files\":[null]}")]
    [InlineData("{\"format\":\"chassis-training-pack\",\"version\":99999999999,\"madeBy\":\"a\",\"licence\":\"b\",\"modules\":[],\"files\":[]}")]
    public void A_note_that_cannot_be_read_is_told(string note) =>
        Refused(Zip([("pack.json", Encoding.UTF8.GetBytes(note)), (Lesson, "one"u8.ToArray())]), "");

    [Fact]
    public void A_pack_of_a_later_version_is_told_as_such() =>
        Refused(Zip([("pack.json", "{\"version\":2,\"new\":1}"u8.ToArray()), (Lesson, "one"u8.ToArray())]), "of version 2");

    [Fact]
    public void Bytes_that_were_changed_anywhere_are_taken_whole_or_refused_with_a_sentence()
    {
        var packs = new[] { Made(), PackTests.Packed("11-electric-chassis-awareness").Write() };
        var taken = 0;
        Gen.Select(Gen.Int[0, 1], Gen.Select(Gen.Int[0, int.MaxValue], Gen.Byte).Array[1, 12], Gen.Int[0, 3]).Sample(
            (which, changes, cut) =>
            {
                var original = packs[which];
                var bytes = original.ToArray();
                foreach (var (at, value) in changes)
                {
                    // Half of the changes go where the directory stands: that is where most can go wrong.
                    var place = at % 2 == 0 ? at % bytes.Length : bytes.Length - 1 - (at % Math.Min(bytes.Length, 2_000));
                    bytes[place] = value;
                }

                if (cut == 0) bytes = bytes[..(changes[0].Item1 % bytes.Length)];
                var read = Pack.Read(bytes);
                if (read.IsOk)
                {
                    // What the note vouches for is what is given out: every file or none.
                    Assert.Equal(Pack.Read(original).Value.Files, read.Value.Files);
                    Interlocked.Increment(ref taken);
                }
                else
                {
                    Assert.NotEmpty(read.Fault.Sentence);
                    Assert.DoesNotContain(read.Fault.Sentence, char.IsControl);
                }
            },
            iter: 20_000);
        Assert.True(taken > 100, $"Only {taken} were taken: the changes spoil everything, and the rest is not tried.");
    }

    [Fact]
    public void Any_bytes_at_all_are_refused_with_a_sentence() => Gen.Byte.Array[0, 400].Sample(bytes =>
        Assert.NotEmpty(Pack.Read(bytes).Fault.Sentence), iter: 5_000);

    private static void Refused(byte[] bytes, string sentence)
    {
        var read = Pack.Read(bytes);
        Assert.False(read.IsOk, "It was taken.");
        Assert.Contains(sentence, read.Fault.Sentence, StringComparison.Ordinal);
        Assert.DoesNotContain(read.Fault.Sentence, char.IsControl);
    }

    private static byte[] Made(params (string Name, string Text)[] more) => Raw([.. more.Select(file => (file.Name, Encoding.UTF8.GetBytes(file.Text)))]);

    private static byte[] Made(Action<ZipArchiveEntry> change) => Zip(Small(), change);

    private static byte[] Raw(params (string Name, byte[] Bytes)[] more) => Zip([.. Small(more), .. more]);

    /// <summary>A small pack whose note vouches for what is added to it, too: it is the file itself that must be refused.</summary>
    private static (string, byte[])[] Small(params (string Name, byte[] Bytes)[] more)
    {
        ContentFile[] files =
        [
            new(Lesson, "one"), new("procedures/a.yaml", "id: a"),
            .. more.Where(file => file.Name != "pack.json").Select(file => new ContentFile(file.Name, Encoding.UTF8.GetString(file.Bytes))),
        ];
        return [("pack.json", NoteOf(Pack.Of(files, "Somebody", "None", ["01-a"]))), (Lesson, "one"u8.ToArray()), ("procedures/a.yaml", "id: a"u8.ToArray())];
    }

    private static byte[] NoteOf(Pack pack)
    {
        using var zip = new ZipArchive(new MemoryStream(pack.Write()));
        using var note = zip.Entries[0].Open();
        using var bytes = new MemoryStream();
        note.CopyTo(bytes);
        return bytes.ToArray();
    }

    private static byte[] Zip((string Name, byte[] Bytes)[] files, Action<ZipArchiveEntry>? change = null)
    {
        using var bytes = new MemoryStream();
        using (var zip = new ZipArchive(bytes, ZipArchiveMode.Create, leaveOpen: true, Encoding.UTF8))
        {
            foreach (var (name, content) in files)
            {
                var entry = zip.CreateEntry(name, CompressionLevel.Optimal);
                change?.Invoke(entry);
                using var stream = entry.Open();
                stream.Write(content);
            }
        }

        return bytes.ToArray();
    }
}
