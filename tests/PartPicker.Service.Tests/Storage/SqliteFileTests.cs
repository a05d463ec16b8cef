using Dapper;
using Microsoft.Data.Sqlite;
using PartPicker.Parts;
using PartPicker.Storage;
using Xunit;

namespace PartPicker.Service.Tests.Storage;

/// <summary>What holds for the SQLite file itself.</summary>
public sealed class SqliteFileTests : IDisposable
{
    private static readonly DateTimeOffset Now = new(2031, 5, 6, 7, 8, 9, TimeSpan.Zero);
    private readonly TempFile file = new();

    public void Dispose() => file.Dispose();

    [Fact]
    public void A_new_file_gets_folder_and_schema_and_a_second_start_changes_nothing()
    {
        file.Open();
        string[] schema = Schema();
        long version = Scalar("PRAGMA user_version");

        file.Open();

        Assert.Equal(3, version);
        Assert.NotEmpty(schema);
        Assert.Equal(schema, Schema());
        Assert.Equal(version, Scalar("PRAGMA user_version"));
    }

    [Fact]
    public async Task Several_programs_that_start_on_a_new_file_at_once_all_get_the_schema()
    {
        await Task.WhenAll(Enumerable.Range(0, 6).Select(_ => Task.Run(() =>
        {
            using var store = new SqliteStore(file.Path);
            Assert.Null(store.LoadNewest());
        })));

        Assert.Equal(3, Scalar("PRAGMA user_version"));
    }

    [Fact]
    public void A_file_of_the_first_schema_keeps_its_catalog_and_takes_labour_after()
    {
        CatalogContents contents = SampleItems.Contents();
        CatalogContents before = contents with
        {
            Outlets = [.. contents.Outlets.Select(o => new Outlet(o.Id, o.Currency, o.Offers))],
        };
        string revision = file.Open().Save(before, Now).Revision;
        Execute("DROP TABLE access_key; DROP TABLE labour; PRAGMA user_version = 1");

        CatalogSnapshot kept = file.Open().LoadNewest()!;

        Assert.Equal(revision, kept.Revision);
        Assert.Equal(contents.Items.Count, kept.Contents.Items.Count);
        Assert.All(kept.Outlets, o => Assert.Empty(o.LabourMinutes));
        file.Open().Save(contents, Now);
        Assert.Equal(
            contents.Outlets.Single(o => o.Id == "north").LabourMinutes,
            file.Open().LoadNewest()!.FindOutlet("north")!.LabourMinutes);
    }

    [Fact]
    public void The_file_is_in_write_ahead_mode_and_every_table_is_strict()
    {
        file.Open();

        using SqliteConnection connection = Raw();
        Assert.Equal("wal", connection.ExecuteScalar<string>("PRAGMA journal_mode"));
        Assert.Equal(0, connection.ExecuteScalar<long>(
            "SELECT COUNT(*) FROM pragma_table_list WHERE strict = 0 AND schema = 'main' AND name NOT LIKE 'sqlite_%'"));
    }

    [Fact]
    public void A_file_of_a_newer_program_is_refused_and_left_alone()
    {
        file.Open();
        Execute("PRAGMA user_version = 99");

        StoreException e = Assert.Throws<StoreException>(file.Open);

        Assert.Contains("schema 99", e.Message);
        Assert.Contains(file.Path, e.Message);
        Assert.Equal(99, Scalar("PRAGMA user_version"));
    }

    [Fact]
    public void A_file_of_another_program_is_refused_and_left_alone()
    {
        Directory.CreateDirectory(Path.GetDirectoryName(file.Path)!);
        Execute("CREATE TABLE recipe (name TEXT)");

        StoreException e = Assert.Throws<StoreException>(file.Open);

        Assert.Contains("another program", e.Message);
        Assert.Equal(1, Scalar("SELECT COUNT(*) FROM sqlite_master"));
    }

    [Fact]
    public void A_file_that_is_no_database_is_refused_and_left_alone()
    {
        Directory.CreateDirectory(Path.GetDirectoryName(file.Path)!);
        string text = string.Concat(Enumerable.Repeat("dear diary, ", 500));
        File.WriteAllText(file.Path, text);

        StoreException e = Assert.Throws<StoreException>(file.Open);

        Assert.Contains("not an SQLite file", e.Message);
        Assert.Equal(text, File.ReadAllText(file.Path));
    }

    [Fact]
    public void A_revision_whose_last_table_cannot_be_written_leaves_the_old_one_and_no_trace()
    {
        string before = file.Open().Save(SampleItems.Contents(1), Now).Revision;
        Execute(
            "CREATE TRIGGER full BEFORE INSERT ON labour WHEN NEW.slot = 'driveSpring' "
            + "BEGIN SELECT RAISE(ABORT, 'the disk is full'); END");

        Assert.Throws<SqliteException>(() => file.Open().Save(SampleItems.Contents(2), Now));

        Assert.Equal(before, file.Open().LoadNewest()!.Revision);
        foreach (string table in new[] { "catalog_item", "outlet", "offer", "labour" })
            Assert.Equal(0, Scalar($"SELECT COUNT(*) FROM {table} WHERE revision <> '{before}'"));

        Execute("DROP TRIGGER full");
        string after = file.Open().Save(SampleItems.Contents(2), Now).Revision;
        Assert.Equal(after, file.Open().LoadNewest()!.Revision);
    }

    [Fact]
    public void A_copy_taken_in_the_middle_of_a_revision_opens_with_the_old_one()
    {
        string before = file.Open().Save(SampleItems.Contents(1), Now).Revision;
        using SqliteConnection connection = Raw();
        // A cache of one page makes SQLite spill the unfinished transaction to the log, as a large import does.
        connection.Execute("PRAGMA cache_size = 1");
        using SqliteTransaction transaction = connection.BeginTransaction();
        connection.Execute("INSERT INTO revision (id, published, created_ms) VALUES ('unfinished', 9, 0)");
        for (int i = 0; i < 200; i++)
        {
            connection.Execute(
                "INSERT INTO catalog_item (revision, kind, id, body) VALUES ('unfinished', 'belt', @id, @body)",
                new { id = $"belt-{i}", body = new string('x', 2_000) });
        }

        using var killed = new TempFile();
        Directory.CreateDirectory(Path.GetDirectoryName(killed.Path)!);
        File.Copy(file.Path, killed.Path);
        File.Copy(file.Path + "-wal", killed.Path + "-wal");
        Assert.True(new FileInfo(killed.Path + "-wal").Length > 200_000, "The unfinished rows are in the copied log.");

        Assert.Equal(before, killed.Open().LoadNewest()!.Revision);
        Assert.NotNull(killed.Open().Save(SampleItems.Contents(2), Now));
    }

    [Fact]
    public void Readers_see_the_old_revision_while_another_connection_writes()
    {
        SqliteStore store = file.Open();
        string before = store.Save(SampleItems.Contents(1), Now).Revision;
        using SqliteConnection connection = Raw();
        using SqliteTransaction transaction = connection.BeginTransaction();
        connection.Execute("INSERT INTO revision (id, published, created_ms) VALUES ('unfinished', 9, 0)");

        Assert.Equal(before, store.LoadNewest()!.Revision);
    }

    [Fact]
    public async Task A_writer_that_waits_for_another_gets_its_turn()
    {
        SqliteStore store = file.Open();
        using SqliteConnection connection = Raw();
        using SqliteTransaction transaction = connection.BeginTransaction();
        connection.Execute("INSERT INTO revision (id, published, created_ms) VALUES ('other', 9, 0)");

        Task<CatalogSnapshot> waiting = Task.Run(() => store.Save(SampleItems.Contents(1), Now));
        Assert.NotSame(waiting, await Task.WhenAny(waiting, Task.Delay(300)));
        transaction.Commit();

        Assert.Equal((await waiting).Revision, store.LoadNewest()!.Revision);
    }

    [Fact]
    public void Members_of_an_item_that_this_program_does_not_know_are_passed_over()
    {
        string revision = file.Open().Save(SampleItems.Contents(), Now).Revision;
        Execute("UPDATE catalog_item SET body = json_set(body, '$.colourOfTheBox', json('{\"a\":[1]}'))");

        CatalogSnapshot read = file.Open().LoadNewest()!;

        Assert.Equal(revision, read.Revision);
        Assert.Equal(7, read.All<Part>().Count());
    }

    [Fact]
    public void Labour_of_a_slot_that_this_program_does_not_know_is_refused()
    {
        file.Open().Save(SampleItems.Contents(), Now);
        Execute("UPDATE labour SET slot = 'axle' WHERE slot = 'helix'");

        StoreException e = Assert.Throws<StoreException>(() => file.Open().LoadNewest());

        Assert.Contains("axle", e.Message);
    }

    [Fact]
    public void Picks_that_expired_a_week_ago_are_purged_when_another_is_kept()
    {
        SqliteStore store = file.Open();
        store.Keep("old", "0123456789ab", "model-1", new byte[] { 1 }, Now);
        store.Keep("young", "0123456789ab", "model-1", new byte[] { 2 }, Now.AddDays(20));
        Assert.Equal(2, Scalar("SELECT COUNT(*) FROM pick"));

        store.Keep("new", "0123456789ab", "model-1", new byte[] { 3 }, Now.AddDays(37));

        Assert.Equal(0, Scalar("SELECT COUNT(*) FROM pick WHERE id = 'old'"));
        Assert.Equal(2, Scalar("SELECT COUNT(*) FROM pick"));
    }

    [Fact]
    public void A_read_that_does_not_move_the_expiry_writes_nothing()
    {
        SqliteStore store = file.Open();
        store.Keep("p1", "0123456789ab", "model-1", new byte[] { 1 }, Now);
        using SqliteConnection writer = Raw();
        using SqliteTransaction holdsTheWriteLock = writer.BeginTransaction();

        Assert.NotNull(store.Find("p1", Now.AddHours(23)));
    }

    private string[] Schema()
    {
        using SqliteConnection connection = Raw();
        return [.. connection.Query<string>("SELECT name || coalesce(sql, '') FROM sqlite_master ORDER BY name")];
    }

    private long Scalar(string sql)
    {
        using SqliteConnection connection = Raw();
        return connection.ExecuteScalar<long>(sql);
    }

    private void Execute(string sql)
    {
        using SqliteConnection connection = Raw();
        connection.Execute(sql);
    }

    private SqliteConnection Raw()
    {
        var connection = new SqliteConnection($"Data Source={file.Path};Pooling=False");
        connection.Open();
        return connection;
    }
}
