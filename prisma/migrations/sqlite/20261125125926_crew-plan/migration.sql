-- AlterTable
ALTER TABLE "Project" ADD COLUMN "crewPlan" JSONB;
