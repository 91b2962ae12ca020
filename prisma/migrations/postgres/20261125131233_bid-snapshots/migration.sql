-- CreateTable
CREATE TABLE "BidSnapshot" (
    "id" TEXT NOT NULL,
    "projectId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "madeBy" TEXT NOT NULL,
    "madeAt" TIMESTAMP(3) NOT NULL,
    "document" BYTEA NOT NULL,
    "figures" JSONB NOT NULL,
    "hash" TEXT NOT NULL,

    CONSTRAINT "BidSnapshot_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "BidSnapshot_projectId_madeAt_idx" ON "BidSnapshot"("projectId", "madeAt");

-- AddForeignKey
ALTER TABLE "BidSnapshot" ADD CONSTRAINT "BidSnapshot_projectId_fkey" FOREIGN KEY ("projectId") REFERENCES "Project"("id") ON DELETE CASCADE ON UPDATE CASCADE;
