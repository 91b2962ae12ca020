-- AlterTable
ALTER TABLE "Run" ADD COLUMN     "held" JSONB;

-- AlterTable
ALTER TABLE "RunRevision" ADD COLUMN     "mark" TEXT;

-- CreateTable
CREATE TABLE "DesignStep" (
    "id" TEXT NOT NULL,
    "projectId" TEXT NOT NULL,
    "seq" INTEGER NOT NULL,
    "touches" JSONB NOT NULL,
    "changes" BYTEA,
    "undoes" TEXT,
    "undone" BOOLEAN NOT NULL DEFAULT false,

    CONSTRAINT "DesignStep_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "DesignStep_projectId_seq_key" ON "DesignStep"("projectId", "seq");

-- AddForeignKey
ALTER TABLE "DesignStep" ADD CONSTRAINT "DesignStep_projectId_fkey" FOREIGN KEY ("projectId") REFERENCES "Project"("id") ON DELETE CASCADE ON UPDATE CASCADE;
