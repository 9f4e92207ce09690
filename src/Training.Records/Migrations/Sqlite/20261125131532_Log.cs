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
            migrationBuilder.DropTable(
                name: "RecordEvents");

            migrationBuilder.DropTable(
                name: "RecordTexts");

            // By hand: a table that is rebuilt needs a statement outside the migration's transaction. This one is empty,
            // because records without a log are refused before.
            migrationBuilder.Sql("DROP TABLE \"CompetencyRecords\";");
            migrationBuilder.Sql(
                """
                CREATE TABLE "CompetencyRecords" (
                    "Id" TEXT NOT NULL CONSTRAINT "PK_CompetencyRecords" PRIMARY KEY,
                    "PersonId" TEXT NOT NULL,
                    "ShopId" TEXT NOT NULL,
                    "Competency" TEXT NOT NULL,
                    "PaperId" TEXT NOT NULL,
                    "Salt" BLOB NULL,
                    "StatusPlace" INTEGER NOT NULL,
                    CONSTRAINT "FK_CompetencyRecords_AspNetUsers_PersonId" FOREIGN KEY ("PersonId") REFERENCES "AspNetUsers" ("Id") ON DELETE RESTRICT,
                    CONSTRAINT "FK_CompetencyRecords_Papers_PaperId" FOREIGN KEY ("PaperId") REFERENCES "Papers" ("Id") ON DELETE RESTRICT,
                    CONSTRAINT "FK_CompetencyRecords_Shops_ShopId" FOREIGN KEY ("ShopId") REFERENCES "Shops" ("Id") ON DELETE RESTRICT
                );
                """);
            migrationBuilder.Sql("CREATE UNIQUE INDEX \"IX_CompetencyRecords_PaperId\" ON \"CompetencyRecords\" (\"PaperId\");");
            migrationBuilder.Sql("CREATE INDEX \"IX_CompetencyRecords_PersonId_Competency\" ON \"CompetencyRecords\" (\"PersonId\", \"Competency\");");
            migrationBuilder.Sql("CREATE INDEX \"IX_CompetencyRecords_ShopId\" ON \"CompetencyRecords\" (\"ShopId\");");

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
        protected override void Down(MigrationBuilder migrationBuilder) =>
            throw new NotSupportedException("What stands in a log is not put back into tables.");
    }
}
