using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Training.Records.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class DrawQuestionsAgain : Migration
    {
        // By hand, so that nothing is rebuilt: SQLite does all of this within the migration's one transaction, and a
        // rebuilt table would need a statement outside it.

        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.Sql("ALTER TABLE \"PaperQuestions\" DROP COLUMN \"Offered\";");
            migrationBuilder.Sql("ALTER TABLE \"PaperQuestions\" DROP COLUMN \"StartJson\";");
            Remake(migrationBuilder, "PaperQuestions", "Procedure", "TEXT NULL");
            Remake(migrationBuilder, "PaperQuestions", "ProcedureHash", "TEXT NULL");
            Remake(migrationBuilder, "PracticeTries", "ProcedureHash", "TEXT NULL");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            Remake(migrationBuilder, "PracticeTries", "ProcedureHash", "TEXT NOT NULL DEFAULT ''");
            Remake(migrationBuilder, "PaperQuestions", "ProcedureHash", "TEXT NOT NULL DEFAULT ''");
            Remake(migrationBuilder, "PaperQuestions", "Procedure", "TEXT NOT NULL DEFAULT ''");
            migrationBuilder.Sql("ALTER TABLE \"PaperQuestions\" ADD COLUMN \"StartJson\" TEXT NOT NULL DEFAULT '';");
            migrationBuilder.Sql("ALTER TABLE \"PaperQuestions\" ADD COLUMN \"Offered\" TEXT NOT NULL DEFAULT '';");
        }

        private static void Remake(MigrationBuilder migrationBuilder, string table, string column, string type)
        {
            migrationBuilder.Sql($"ALTER TABLE \"{table}\" RENAME COLUMN \"{column}\" TO \"{column}Before\";");
            migrationBuilder.Sql($"ALTER TABLE \"{table}\" ADD COLUMN \"{column}\" {type};");
            migrationBuilder.Sql($"UPDATE \"{table}\" SET \"{column}\" = IFNULL(\"{column}Before\", '');");
            migrationBuilder.Sql($"ALTER TABLE \"{table}\" DROP COLUMN \"{column}Before\";");
        }
    }
}
