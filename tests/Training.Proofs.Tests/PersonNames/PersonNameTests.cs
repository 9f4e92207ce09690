using CsCheck;
using Training.Proofs.PersonNames;
using static Training.Proofs.Tests.TestKeys;

namespace Training.Proofs.Tests.PersonNames;

public class PersonNameTests
{
    // [computed] with another program: SHA-256 of the three parts, each after its length in four bytes.
    [Fact]
    public void A_name_has_one_hash_for_ever() =>
        Assert.Equal(
            "e7ecb14ba1dfbb2b9e88aba5c60ef678de9c1b60d9d0965c0d90a0ab56ea0643",
            PersonName.Hash("Amara Nwosu", Convert.FromHexString("000102030405060708090a0b0c0d0e0f")).ToString());

    [Fact]
    public void The_name_and_its_salt_are_recognised_and_nothing_else_is()
    {
        Sha256Digest hash = PersonName.Hash("Amara Nwosu", Salt("a"));
        Assert.True(PersonName.Matches(hash, "Amara Nwosu", Salt("a")));
        Assert.False(PersonName.Matches(hash, "Amara Nwosi", Salt("a")));
        Assert.False(PersonName.Matches(hash, "Amara Nwosu", Salt("b")));
    }

    [Fact]
    public void Two_people_of_one_name_cannot_be_linked() =>
        Assert.NotEqual(PersonName.Hash("Wei Chen", Salt("a")), PersonName.Hash("Wei Chen", Salt("b")));

    [Fact]
    public void The_way_accents_are_coded_and_spaces_around_make_no_difference() =>
        Assert.Equal(PersonName.Hash("Jiří Dvořák", Salt("a")), PersonName.Hash(" Jir\u030Ci\u0301 Dvor\u030Ca\u0301k ", Salt("a")));

    [Fact]
    public void Moving_bytes_between_salt_and_name_gives_another_hash() =>
        Gen.Select(Gen.Char['a', 'z'].Array[1, 8], Gen.Byte.Array[16, 24]).Sample((letters, salt) =>
        {
            string name = new(letters);
            byte[] longer = [.. salt, (byte)name[0]];
            Assert.NotEqual(PersonName.Hash(name, salt), PersonName.Hash(name[1..], longer));
        });

    [Fact]
    public void A_short_salt_is_a_fault_of_the_calling_code() =>
        Assert.Throws<ArgumentException>(() => PersonName.Hash("Amara Nwosu", new byte[15]));
}
