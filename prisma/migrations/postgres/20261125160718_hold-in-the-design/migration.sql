-- AlterTable
ALTER TABLE "Run" DROP COLUMN "held";
