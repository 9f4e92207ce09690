using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Training.Records.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class Log : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropForeignKey(
                name: "FK_CompetencyRecords_PublishedTexts_CompetencyHash",
                table: "CompetencyRecords");

            migrationBuilder.DropTable(
                name: "RecordEvents");

            migrationBuilder.DropTable(
                name: "RecordTexts");

            migrationBuilder.DropIndex(
                name: "IX_CompetencyRecords_CompetencyHash",
                table: "CompetencyRecords");

            migrationBuilder.DropColumn(
                name: "CompetencyHash",
                table: "CompetencyRecords");

            migrationBuilder.RenameColumn(
                name: "IssuedAt",
                table: "CompetencyRecords",
                newName: "StatusPlace");

            migrationBuilder.AddColumn<byte[]>(
                name: "Salt",
                table: "CompetencyRecords",
                type: "BLOB",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "LogEntries",
                columns: table => new
                {
                    Index = table.Column<long>(type: "INTEGER", nullable: false),
                    Text = table.Column<byte[]>(type: "BLOB", nullable: false),
                    LeafHash = table.Column<byte[]>(type: "BLOB", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_LogEntries", x => x.Index);
                });

            migrationBuilder.CreateTable(
                name: "LogNotes",
                columns: table => new
                {
                    EntryIndex = table.Column<long>(type: "INTEGER", nullable: false),
                    RecordId = table.Column<Guid>(type: "TEXT", nullable: false),
                    ById = table.Column<Guid>(type: "TEXT", nullable: false),
                    Reason = table.Column<string>(type: "TEXT", nullable: false),
                    Salt = table.Column<byte[]>(type: "BLOB", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_LogNotes", x => x.EntryIndex);
                    table.ForeignKey(
                        name: "FK_LogNotes_AspNetUsers_ById",
                        column: x => x.ById,
                        principalTable: "AspNetUsers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_LogNotes_CompetencyRecords_RecordId",
                        column: x => x.RecordId,
                        principalTable: "CompetencyRecords",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_LogNotes_LogEntries_EntryIndex",
                        column: x => x.EntryIndex,
                        principalTable: "LogEntries",
                        principalColumn: "Index",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_CompetencyRecords_StatusPlace",
                table: "CompetencyRecords",
                column: "StatusPlace",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_LogNotes_ById",
                table: "LogNotes",
                column: "ById");

            migrationBuilder.CreateIndex(
                name: "IX_LogNotes_RecordId",
                table: "LogNotes",
                column: "RecordId");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "LogNotes");

            migrationBuilder.DropTable(
                name: "LogEntries");

            migrationBuilder.DropIndex(
                name: "IX_CompetencyRecords_StatusPlace",
                table: "CompetencyRecords");

            migrationBuilder.DropColumn(
                name: "Salt",
                table: "CompetencyRecords");

            migrationBuilder.RenameColumn(
                name: "StatusPlace",
                table: "CompetencyRecords",
                newName: "IssuedAt");

            migrationBuilder.AddColumn<string>(
                name: "CompetencyHash",
                table: "CompetencyRecords",
                type: "TEXT",
                nullable: false,
                defaultValue: "");

            migrationBuilder.CreateTable(
                name: "RecordEvents",
                columns: table => new
                {
                    RecordId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Number = table.Column<int>(type: "INTEGER", nullable: false),
                    At = table.Column<long>(type: "INTEGER", nullable: false),
                    ById = table.Column<Guid>(type: "TEXT", nullable: false),
                    Kind = table.Column<string>(type: "TEXT", nullable: false),
                    Reason = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_RecordEvents", x => new { x.RecordId, x.Number });
                    table.ForeignKey(
                        name: "FK_RecordEvents_AspNetUsers_ById",
                        column: x => x.ById,
                        principalTable: "AspNetUsers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_RecordEvents_CompetencyRecords_RecordId",
                        column: x => x.RecordId,
                        principalTable: "CompetencyRecords",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "RecordTexts",
                columns: table => new
                {
                    RecordId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Path = table.Column<string>(type: "TEXT", nullable: false),
                    Hash = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_RecordTexts", x => new { x.RecordId, x.Path, x.Hash });
                    table.ForeignKey(
                        name: "FK_RecordTexts_CompetencyRecords_RecordId",
                        column: x => x.RecordId,
                        principalTable: "CompetencyRecords",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_RecordTexts_PublishedTexts_Hash",
                        column: x => x.Hash,
                        principalTable: "PublishedTexts",
                        principalColumn: "Hash",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_CompetencyRecords_CompetencyHash",
                table: "CompetencyRecords",
                column: "CompetencyHash");

            migrationBuilder.CreateIndex(
                name: "IX_RecordEvents_ById",
                table: "RecordEvents",
                column: "ById");

            migrationBuilder.CreateIndex(
                name: "IX_RecordTexts_Hash",
                table: "RecordTexts",
                column: "Hash");

            migrationBuilder.AddForeignKey(
                name: "FK_CompetencyRecords_PublishedTexts_CompetencyHash",
                table: "CompetencyRecords",
                column: "CompetencyHash",
                principalTable: "PublishedTexts",
                principalColumn: "Hash",
                onDelete: ReferentialAction.Restrict);
        }
    }
}
