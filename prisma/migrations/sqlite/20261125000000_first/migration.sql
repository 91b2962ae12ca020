-- CreateTable
CREATE TABLE "User" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "email" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "passwordHash" TEXT NOT NULL,
    "administrator" BOOLEAN NOT NULL DEFAULT false,
    "disabledAt" DATETIME,
    "createdAt" DATETIME NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1
);

-- CreateTable
CREATE TABLE "Session" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "userId" TEXT,
    "data" JSONB NOT NULL,
    "expiresAt" DATETIME NOT NULL,
    CONSTRAINT "Session_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "ApiToken" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "userId" TEXT NOT NULL,
    "label" TEXT NOT NULL,
    "hash" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL,
    "lastUsedAt" DATETIME,
    "revokedAt" DATETIME,
    CONSTRAINT "ApiToken_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Site" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "sessionSecret" TEXT NOT NULL
);

-- CreateTable
CREATE TABLE "OneTimeLink" (
    "hash" TEXT NOT NULL PRIMARY KEY,
    "purpose" TEXT NOT NULL,
    "userId" TEXT,
    "createdAt" DATETIME NOT NULL,
    "expiresAt" DATETIME NOT NULL,
    "usedAt" DATETIME
);

-- CreateTable
CREATE TABLE "Project" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "number" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "search" TEXT NOT NULL,
    "spec" JSONB NOT NULL,
    "extras" JSONB NOT NULL,
    "bid" JSONB,
    "insulationRule" TEXT,
    "designVersion" INTEGER NOT NULL DEFAULT 1,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" DATETIME NOT NULL,
    "archivedAt" DATETIME
);

-- CreateTable
CREATE TABLE "Membership" (
    "projectId" TEXT NOT NULL,
    "userId" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,

    PRIMARY KEY ("projectId", "userId"),
    CONSTRAINT "Membership_projectId_fkey" FOREIGN KEY ("projectId") REFERENCES "Project" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "Membership_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Level" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "projectId" TEXT NOT NULL,
    "key" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "ordinal" INTEGER NOT NULL,
    "spec" JSONB NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "Level_projectId_fkey" FOREIGN KEY ("projectId") REFERENCES "Project" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "BuswayType" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "projectId" TEXT NOT NULL,
    "key" TEXT NOT NULL,
    "ordinal" INTEGER NOT NULL,
    "spec" JSONB NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "BuswayType_projectId_fkey" FOREIGN KEY ("projectId") REFERENCES "Project" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "LabourBook" (
    "projectId" TEXT NOT NULL PRIMARY KEY,
    "spec" JSONB NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "LabourBook_projectId_fkey" FOREIGN KEY ("projectId") REFERENCES "Project" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Run" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "projectId" TEXT NOT NULL,
    "levelId" TEXT NOT NULL,
    "typeId" TEXT NOT NULL,
    "key" TEXT NOT NULL,
    "ordinal" INTEGER NOT NULL,
    "area" TEXT,
    "side" TEXT,
    "parentKey" TEXT,
    "pairedKey" TEXT,
    "spec" JSONB NOT NULL,
    "layout" JSONB NOT NULL,
    "lengthU80" INTEGER NOT NULL,
    "layoutOk" BOOLEAN NOT NULL,
    "stops" INTEGER NOT NULL DEFAULT 0,
    "revision" INTEGER NOT NULL DEFAULT 0,
    "changed" BOOLEAN NOT NULL DEFAULT false,
    "releasedAt" DATETIME,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "Run_projectId_fkey" FOREIGN KEY ("projectId") REFERENCES "Project" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "Run_levelId_fkey" FOREIGN KEY ("levelId") REFERENCES "Level" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Run_typeId_fkey" FOREIGN KEY ("typeId") REFERENCES "BuswayType" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "RunRevision" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "runId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "spec" JSONB NOT NULL,
    "layout" JSONB NOT NULL,
    "reason" TEXT NOT NULL,
    "byUserId" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    CONSTRAINT "RunRevision_runId_fkey" FOREIGN KEY ("runId") REFERENCES "Run" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Piece" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "projectId" TEXT NOT NULL,
    "runId" TEXT NOT NULL,
    "ordinal" INTEGER NOT NULL,
    "mark" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "hand" TEXT,
    "fromU80" INTEGER NOT NULL,
    "toU80" INTEGER NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'planned',
    "stateAt" DATETIME,
    "lot" TEXT,
    "retiredAt" DATETIME,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "Piece_runId_fkey" FOREIGN KEY ("runId") REFERENCES "Run" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Joint" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "projectId" TEXT NOT NULL,
    "runId" TEXT NOT NULL,
    "ordinal" INTEGER NOT NULL,
    "mark" TEXT NOT NULL,
    "atU80" INTEGER NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'open',
    "stateAt" DATETIME,
    "stepsDone" INTEGER NOT NULL DEFAULT 0,
    "retiredAt" DATETIME,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "Joint_runId_fkey" FOREIGN KEY ("runId") REFERENCES "Run" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Support" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "projectId" TEXT NOT NULL,
    "runId" TEXT NOT NULL,
    "ordinal" INTEGER NOT NULL,
    "mark" TEXT NOT NULL,
    "atU80" INTEGER NOT NULL,
    "measuredU80" INTEGER,
    "loadKg" REAL NOT NULL,
    "continuousLoadKg" REAL NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'planned',
    "stateAt" DATETIME,
    "retiredAt" DATETIME,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "Support_runId_fkey" FOREIGN KEY ("runId") REFERENCES "Run" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Tap" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "projectId" TEXT NOT NULL,
    "runId" TEXT NOT NULL,
    "ordinal" INTEGER NOT NULL,
    "key" TEXT NOT NULL,
    "atU80" INTEGER NOT NULL,
    "spec" JSONB NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'planned',
    "stateAt" DATETIME,
    "retiredAt" DATETIME,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "Tap_runId_fkey" FOREIGN KEY ("runId") REFERENCES "Run" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Inspection" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "projectId" TEXT NOT NULL,
    "runId" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "subjectId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "body" JSONB NOT NULL,
    "outcome" TEXT,
    "byUserId" TEXT NOT NULL,
    "byName" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    "recordedAt" DATETIME NOT NULL,
    "submissionId" TEXT NOT NULL,
    "supersedesId" TEXT,
    "cause" TEXT,
    "seq" INTEGER NOT NULL,
    CONSTRAINT "Inspection_projectId_fkey" FOREIGN KEY ("projectId") REFERENCES "Project" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "Inspection_runId_fkey" FOREIGN KEY ("runId") REFERENCES "Run" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "AuditEntry" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "chain" TEXT NOT NULL,
    "seq" INTEGER NOT NULL,
    "at" DATETIME NOT NULL,
    "userId" TEXT,
    "userName" TEXT NOT NULL,
    "action" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "subjectId" TEXT NOT NULL,
    "before" JSONB,
    "after" JSONB,
    "money" BOOLEAN NOT NULL DEFAULT false,
    "previousHash" TEXT NOT NULL,
    "hash" TEXT NOT NULL
);

-- CreateTable
CREATE TABLE "Submission" (
    "userId" TEXT NOT NULL,
    "key" TEXT NOT NULL,
    "requestHash" TEXT NOT NULL,
    "status" INTEGER NOT NULL,
    "body" JSONB NOT NULL,
    "createdAt" DATETIME NOT NULL,

    PRIMARY KEY ("userId", "key")
);

-- CreateIndex
CREATE UNIQUE INDEX "User_email_key" ON "User"("email");

-- CreateIndex
CREATE INDEX "Session_expiresAt_idx" ON "Session"("expiresAt");

-- CreateIndex
CREATE UNIQUE INDEX "ApiToken_hash_key" ON "ApiToken"("hash");

-- CreateIndex
CREATE INDEX "ApiToken_userId_idx" ON "ApiToken"("userId");

-- CreateIndex
CREATE UNIQUE INDEX "Project_number_key" ON "Project"("number");

-- CreateIndex
CREATE INDEX "Membership_userId_idx" ON "Membership"("userId");

-- CreateIndex
CREATE UNIQUE INDEX "Level_projectId_key_key" ON "Level"("projectId", "key");

-- CreateIndex
CREATE UNIQUE INDEX "BuswayType_projectId_key_key" ON "BuswayType"("projectId", "key");

-- CreateIndex
CREATE INDEX "Run_projectId_ordinal_idx" ON "Run"("projectId", "ordinal");

-- CreateIndex
CREATE INDEX "Run_levelId_ordinal_idx" ON "Run"("levelId", "ordinal");

-- CreateIndex
CREATE INDEX "Run_projectId_parentKey_idx" ON "Run"("projectId", "parentKey");

-- CreateIndex
CREATE INDEX "Run_projectId_pairedKey_idx" ON "Run"("projectId", "pairedKey");

-- CreateIndex
CREATE UNIQUE INDEX "Run_projectId_key_key" ON "Run"("projectId", "key");

-- CreateIndex
CREATE UNIQUE INDEX "RunRevision_runId_number_key" ON "RunRevision"("runId", "number");

-- CreateIndex
CREATE INDEX "Piece_runId_ordinal_idx" ON "Piece"("runId", "ordinal");

-- CreateIndex
CREATE INDEX "Piece_projectId_state_idx" ON "Piece"("projectId", "state");

-- CreateIndex
CREATE INDEX "Joint_runId_ordinal_idx" ON "Joint"("runId", "ordinal");

-- CreateIndex
CREATE INDEX "Joint_projectId_state_idx" ON "Joint"("projectId", "state");

-- CreateIndex
CREATE INDEX "Support_runId_ordinal_idx" ON "Support"("runId", "ordinal");

-- CreateIndex
CREATE INDEX "Support_projectId_state_idx" ON "Support"("projectId", "state");

-- CreateIndex
CREATE INDEX "Tap_runId_ordinal_idx" ON "Tap"("runId", "ordinal");

-- CreateIndex
CREATE INDEX "Tap_projectId_state_idx" ON "Tap"("projectId", "state");

-- CreateIndex
CREATE UNIQUE INDEX "Inspection_supersedesId_key" ON "Inspection"("supersedesId");

-- CreateIndex
CREATE INDEX "Inspection_runId_recordedAt_idx" ON "Inspection"("runId", "recordedAt");

-- CreateIndex
CREATE INDEX "Inspection_subjectId_seq_idx" ON "Inspection"("subjectId", "seq");

-- CreateIndex
CREATE INDEX "Inspection_projectId_kind_recordedAt_idx" ON "Inspection"("projectId", "kind", "recordedAt");

-- CreateIndex
CREATE UNIQUE INDEX "Inspection_projectId_submissionId_key" ON "Inspection"("projectId", "submissionId");

-- CreateIndex
CREATE UNIQUE INDEX "Inspection_projectId_seq_key" ON "Inspection"("projectId", "seq");

-- CreateIndex
CREATE INDEX "AuditEntry_chain_at_idx" ON "AuditEntry"("chain", "at");

-- CreateIndex
CREATE UNIQUE INDEX "AuditEntry_chain_seq_key" ON "AuditEntry"("chain", "seq");

-- CreateIndex
CREATE INDEX "Submission_createdAt_idx" ON "Submission"("createdAt");
