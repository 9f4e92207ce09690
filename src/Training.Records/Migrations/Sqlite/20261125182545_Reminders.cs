using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Training.Records.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class Reminders : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "CalendarAddresses",
                columns: table => new
                {
                    PersonId = table.Column<Guid>(type: "TEXT", nullable: false),
                    SecretHash = table.Column<byte[]>(type: "BLOB", nullable: false),
                    MadeAt = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_CalendarAddresses", x => x.PersonId);
                    table.ForeignKey(
                        name: "FK_CalendarAddresses_AspNetUsers_PersonId",
                        column: x => x.PersonId,
                        principalTable: "AspNetUsers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "JobProofs",
                columns: table => new
                {
                    ProofId = table.Column<Guid>(type: "TEXT", nullable: false),
                    JobId = table.Column<Guid>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_JobProofs", x => x.ProofId);
                    table.ForeignKey(
                        name: "FK_JobProofs_Jobs_JobId",
                        column: x => x.JobId,
                        principalTable: "Jobs",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_JobProofs_Proofs_ProofId",
                        column: x => x.ProofId,
                        principalTable: "Proofs",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "ReminderMails",
                columns: table => new
                {
                    PersonId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Week = table.Column<string>(type: "TEXT", nullable: false),
                    MessageId = table.Column<string>(type: "TEXT", maxLength: 100, nullable: false),
                    BegunAt = table.Column<long>(type: "INTEGER", nullable: false),
                    SentAt = table.Column<long>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ReminderMails", x => new { x.PersonId, x.Week });
                    table.ForeignKey(
                        name: "FK_ReminderMails_AspNetUsers_PersonId",
                        column: x => x.PersonId,
                        principalTable: "AspNetUsers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_CalendarAddresses_SecretHash",
                table: "CalendarAddresses",
                column: "SecretHash",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_JobProofs_JobId",
                table: "JobProofs",
                column: "JobId");

            migrationBuilder.CreateIndex(
                name: "IX_ReminderMails_MessageId",
                table: "ReminderMails",
                column: "MessageId",
                unique: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "CalendarAddresses");

            migrationBuilder.DropTable(
                name: "JobProofs");

            migrationBuilder.DropTable(
                name: "ReminderMails");
        }
    }
}
