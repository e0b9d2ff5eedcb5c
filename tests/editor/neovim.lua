-- Attaches the language server in LAMELLA_SERVER to the open file and prints, as one line of JSON,
-- what it published: the messages as they came, not as this editor stored them.
local buffer = vim.api.nvim_get_current_buf()
local published

local client = vim.lsp.start_client({
  name = 'lamella',
  cmd = { vim.env.LAMELLA_NODE, vim.env.LAMELLA_SERVER, '--stdio' },
  root_dir = vim.fn.getcwd(),
  get_language_id = function() return 'shootplan' end,
  handlers = {
    ['textDocument/publishDiagnostics'] = function(_, result)
      if result.uri == vim.uri_from_bufnr(buffer) then published = result.diagnostics end
    end,
  },
})

if client then vim.lsp.buf_attach_client(buffer, client) end
local answered = vim.wait(20000, function() return published ~= nil end, 20)
if answered then io.stdout:write(vim.json.encode(published) .. '\n') end
if client then vim.lsp.stop_client(client) end
vim.wait(5000, function() return vim.lsp.client_is_stopped(client) end, 20)
vim.cmd(answered and 'qall!' or 'cquit')
