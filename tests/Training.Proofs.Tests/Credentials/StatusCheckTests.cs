using System.Text.Json.Nodes;
using Training.Proofs.CanonicalJson;
using Training.Proofs.Credentials;
using Training.Proofs.Signing;
using Training.Proofs.StatusLists;
using static Training.Proofs.Tests.TestKeys;
using About = Training.Proofs.Credentials.Check;

namespace Training.Proofs.Tests.Credentials;

/// <summary>What status lists and the record's own history say of the day that is asked about.</summary>
public sealed class StatusCheckTests : IDisposable
{
    private readonly Awards awards = new();

    public void Dispose() => awards.Dispose();

    [Theory]
    [InlineData(StatusPurpose.Revocation, 94567, CheckReason.Withdrawn)]
    [InlineData(StatusPurpose.Suspension, 17, CheckReason.Suspended)]
    public void A_set_bit_fails(StatusPurpose purpose, int index, CheckReason reason)
    {
        byte[] other = awards.List(purpose == StatusPurpose.Revocation ? StatusPurpose.Suspension : StatusPurpose.Revocation, []);
        VerificationReport report = Check(awards.Request() with { StatusLists = [other, awards.List(purpose, [index])] });
        CheckResult failed = report.Of(About.Status).Single(result => result.State == CheckState.Failed);
        Assert.Equal(reason, failed.Reason);
        Assert.Equal(CheckState.Failed, report.State);
    }

    [Fact]
    public void Of_two_lists_the_later_one_counts()
    {
        byte[] suspended = awards.List(StatusPurpose.Suspension, []);
        byte[] before = awards.List(StatusPurpose.Revocation, [], Now.AddDays(-2));
        byte[] after = awards.List(StatusPurpose.Revocation, [94567]);
        Assert.Equal(CheckState.Failed, Check(awards.Request() with { StatusLists = [suspended, after, before] }).State);
    }

    [Fact]
    public void A_list_that_is_missing_or_too_old_or_not_to_be_believed_leaves_the_status_unchecked()
    {
        byte[] suspended = awards.List(StatusPurpose.Suspension, []);
        byte[] good = awards.List(StatusPurpose.Revocation, []);
        byte[] stale = awards.List(StatusPurpose.Revocation, [], Now.AddDays(-8));
        Unchecked(CheckReason.NoStatusList);
        Unchecked(CheckReason.StatusListTooOld, stale);
        Unchecked(CheckReason.StatusListNotBelieved, Awards.Bytes(Tampered(good)));

        void Unchecked(CheckReason reason, params byte[][] lists)
        {
            VerificationReport report = Check(awards.Request() with { StatusLists = [suspended, .. lists.Select(list => (ReadOnlyMemory<byte>)list)] });
            CheckResult result = report.Of(About.Status).Single(result => result.State != CheckState.Passed);
            Assert.Equal((CheckState.NotChecked, reason), (result.State, result.Reason));
            Assert.Equal(CheckState.NotChecked, report.State);
        }
    }

    [Fact]
    public void A_list_of_another_issuer_is_not_believed()
    {
        DidWeb stranger = DidWeb.For("other.example").Value;
        byte[] theirs = awards.List(StatusPurpose.Revocation, [], issuer: stranger);
        KeyRing keys = Ring(awards.Key).With(new KeyRing([new IssuerKey(KeyId.For(stranger, awards.Key.PublicKey), awards.Key.PublicKey)]));
        VerificationReport report = Check(awards.Request() with { Keys = keys, StatusLists = [theirs] });
        Assert.Contains(report.Of(About.Status), result => result.Reason == CheckReason.StatusListNotBelieved);
    }

    [Fact]
    public void A_credential_that_names_no_list_leaves_the_status_unchecked() =>
        Is(Check(awards.Request(), awards.Secured(Awards.Credential() with { Status = [] })),
            About.Status, CheckState.NotChecked, CheckReason.NoStatus);

    [Fact]
    public void A_list_that_was_current_at_the_date_asked_about_is_enough()
    {
        byte[] stale = awards.List(StatusPurpose.Revocation, [], Now.AddDays(-20));
        byte[] suspended = awards.List(StatusPurpose.Suspension, [], Now.AddDays(-20));
        Assert.Equal(CheckState.Passed, Check(awards.Request() with { StatusLists = [stale, suspended], On = DayOf(Now.AddDays(-15)) }).State);
    }

    [Fact]
    public void A_list_says_nothing_of_a_suspension_before_its_time_and_of_a_withdrawal_only_that_there_was_none()
    {
        VerificationReport report = Check(awards.Request() with { On = DayOf(Now.AddDays(-10)) });
        Assert.Equal(
            [(CheckState.Passed, CheckReason.Fits), (CheckState.NotChecked, CheckReason.StatusListTooNew)],
            report.Of(About.Status).Select(result => (result.State, result.Reason)));
        byte[] withdrawn = awards.List(StatusPurpose.Revocation, [94567]);
        VerificationReport since = Check(awards.Request() with { StatusLists = [withdrawn, awards.List(StatusPurpose.Suspension, [])], On = DayOf(Now.AddDays(-10)) });
        Assert.All(since.Of(About.Status), result => Assert.Equal((CheckState.NotChecked, CheckReason.StatusListTooNew), (result.State, result.Reason)));
    }

    [Fact]
    public void A_list_says_nothing_of_a_day_to_come()
    {
        VerificationReport report = Check(awards.Request() with { On = DayOf(Now.AddDays(1)) });
        Assert.All(report.Of(About.Status), result => Assert.Equal((CheckState.NotChecked, CheckReason.StatusListTooOld), (result.State, result.Reason)));
    }

    [Theory]
    [InlineData(-13, CheckState.Passed)]
    [InlineData(-12, CheckState.Failed)]
    [InlineData(-9, CheckState.Failed)]
    [InlineData(-8, CheckState.Passed)]
    [InlineData(-5, CheckState.Passed)]
    [InlineData(-4, CheckState.Failed)]
    public void The_records_history_tells_every_day_before_the_list(int day, CheckState state)
    {
        (JsonObject secured, VerificationRequest request) = awards.WithHistory(
            (-12, "record-suspended"), (-8, "record-reinstated"), (-4, "record-withdrawn"));
        VerificationReport report = Check(request with { On = DayOf(Now.AddDays(day)) }, secured);
        Assert.Equal(state, report.Of(About.Status).Any(result => result.State == CheckState.Failed) ? CheckState.Failed
            : report.Of(About.Status).Any(result => result.State == CheckState.NotChecked) ? CheckState.NotChecked : CheckState.Passed);
    }

    [Fact]
    public void A_history_of_another_record_or_that_is_not_in_the_log_is_none()
    {
        (JsonObject secured, VerificationRequest request) = awards.WithHistory((-12, "record-suspended"), (-8, "record-reinstated"));
        LogInclusion entry = request.History![0];
        Unchecked(entry with { Proof = entry.Proof with { LeafIndex = entry.Proof.LeafIndex + 1 } });
        Unchecked(Awards.Place(12, index: 6));

        void Unchecked(LogInclusion history) => Assert.Contains(
            Check(request with { History = [history], On = DayOf(Now.AddDays(-10)) }, secured).Of(About.Status),
            result => result.Reason == CheckReason.StatusListTooNew);
    }

    private static void Is(VerificationReport report, About check, CheckState state, CheckReason reason)
    {
        CheckResult result = Assert.Single(report.Of(check));
        Assert.Equal((state, reason), (result.State, result.Reason));
    }

    private static DateOnly DayOf(DateTimeOffset instant) => DateOnly.FromDateTime(instant.UtcDateTime);

    private VerificationReport Check(VerificationRequest request, JsonObject? secured = null) =>
        CredentialVerifier.Check(Awards.Bytes(secured ?? awards.Secured()), request);

    private static JsonObject Tampered(byte[] list)
    {
        JsonObject document = StrictJson.ReadObject(list).Value;
        document["validUntil"] = "2036-01-01T00:00:00Z";
        return document;
    }
}
